import type { BearerShare } from "../model/bearers.js";
import type { OptionBalance } from "../model/compare.js";
import { at } from "../model/lake/calendar.js";
import { type Money, sumOf } from "../model/money/line.js";
import { type ReportContext, requestedOption } from "./context.js";
import { percent, ratio } from "./format.js";
import { allOptions } from "./program-view.js";
import { head, num, row, type TableView } from "./view-types.js";

export interface ComparisonView {
  readonly options: TableView;
  /** Absent, with the ranges, where the lake is infested and no program can avoid a loss. */
  readonly balance: TableView | undefined;
  readonly ranges: TableView | undefined;
  readonly yearly: TableView;
  readonly cumulative: TableView;
  readonly bearers: TableView;
  readonly verdicts: readonly string[];
}

export function comparisonView(context: ReportContext): ComparisonView {
  const isInfested = context.infestedSince !== undefined;
  return {
    options: optionsTable(context),
    balance: isInfested ? undefined : balanceTable(context),
    ranges: isInfested ? undefined : rangesTable(context),
    yearly: yearlyTable(context),
    cumulative: cumulativeTable(context),
    bearers: bearersTable(context),
    verdicts: isInfested
      ? ["The lake is infested: the options differ only in what is still spent on them. No loss is avoided."]
      : context.comparison.options.map((option) => verdict(option, context)),
  };
}

function optionsTable(context: ReportContext): TableView {
  const { format, horizon, priceYear } = context;
  return {
    id: "table-options",
    caption: `Each option over ${horizon} years, per year, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Program"),
      num("Expected infestation"),
      num("Together"),
      num(`Chance of infestation in ${horizon} years`),
    ),
    rows: allOptions(context).map(({ option, equivalentYearly, infestedByYear }) =>
      row(
        option.name,
        num(format.money(equivalentYearly.program)),
        num(format.money(equivalentYearly.infestation)),
        num(format.money(equivalentYearly.total)),
        num(percent(infestedByYear.at(-1) ?? 0)),
      ),
    ),
    note: "Equal yearly amounts with the same present value. A program's amount is below its yearly budget because it shrinks or ends once the lake is infested.",
  };
}

function balanceTable(context: ReportContext): TableView {
  const { comparison, format } = context;
  return {
    id: "table-balance",
    caption: `Each program against “${comparison.baseline.option.name}”, present values, prices of ${context.priceYear}`,
    head: head(
      "Program",
      num("Added cost"),
      num("Loss avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
      num("Break-even chance a year"),
      num("Break-even budget a year"),
    ),
    rows: comparison.options.map((option) =>
      row(
        option.result.option.name,
        num(format.money(option.addedProgramCost)),
        num(format.money(option.avoidedLoss)),
        num(format.money(option.netBenefit)),
        num(option.benefitCostRatio === undefined ? "–" : ratio(option.benefitCostRatio)),
        num(option.breakEven.hazard === undefined ? "none" : percent(option.breakEven.hazard)),
        num(option.breakEven.programPerYear ? format.money(option.breakEven.programPerYear) : "none"),
      ),
    ),
    note: "Break-even chance: of infestation without the program, at which the program pays with its present effect. Break-even budget: the yearly program cost that the avoided loss would carry.",
  };
}

/** The requested option with one group of assumptions at a time at its low and high values. */
function rangesTable(context: ReportContext): TableView {
  const { run, format } = context;
  const cells = (comparison: typeof context.comparison) => {
    const requested = requestedOption({ document: run.document, comparison });
    return [
      num(format.money(requested.netBenefit)),
      num(requested.benefitCostRatio === undefined ? "–" : ratio(requested.benefitCostRatio)),
    ] as const;
  };
  return {
    id: "table-ranges",
    caption: `How far “${context.requested.result.option.name}” moves when one group of assumptions at a time is low or high`,
    head: head(
      "What is moved",
      num("Net benefit, low"),
      num("Ratio, low"),
      num("Net benefit, high"),
      num("Ratio, high"),
    ),
    rows: run.ranges.map(({ name, low, high }) => row(name, ...cells(low), ...cells(high))),
    note: "Low and high are the ends of each assumption's stated range (appendix C). One group at a time, exact model; no probabilities are attached.",
  };
}

function yearlyTable(context: ReportContext): TableView {
  const options = allOptions(context);
  const { format, run } = context;
  return {
    id: "table-yearly",
    caption: `Expected cost of each year, program and infestation together, prices of ${context.priceYear}`,
    head: head(
      "Year",
      num("Discount factor"),
      ...options.flatMap(({ option }) => [num(`${option.name}: chance so far`), num("cost")]),
    ),
    rows: context.comparison.discountFactors.map((factor, year) =>
      row(
        String(run.document.money.startYear + year),
        num(factor.toFixed(4)),
        ...options.flatMap(({ expectedByYear, infestedByYear }) => [
          num(percent(at(infestedByYear, year))),
          num(format.exactMoney(at(expectedByYear, year).total)),
        ]),
      ),
    ),
    total: row(
      "Undiscounted",
      num(""),
      ...options.flatMap(({ undiscounted }) => [num(""), num(format.exactMoney(undiscounted.total))]),
    ),
    compact: true,
  };
}

export function cumulativePresentValues(context: ReportContext): number[][] {
  return allOptions(context).map(({ expectedByYear }) => {
    let sum = 0;
    return expectedByYear.map((cost, year) => {
      sum += cost.total.toNumber() * at(context.comparison.discountFactors, year);
      return sum;
    });
  });
}

function cumulativeTable(context: ReportContext): TableView {
  const options = allOptions(context);
  const sums = cumulativePresentValues(context);
  return {
    id: "table-cumulative",
    caption: `Present value of all costs up to each year, prices of ${context.priceYear}`,
    head: head("Year", ...options.map(({ option }) => num(option.name))),
    rows: context.comparison.discountFactors.map((_, year) =>
      row(
        String(context.run.document.money.startYear + year),
        ...sums.map((series) => num(context.format.exactMoney(at(series, year)))),
      ),
    ),
    compact: true,
  };
}

function bearersTable(context: ReportContext): TableView {
  const { requested, format } = context;
  const total = (read: (each: BearerShare) => Money) => num(format.money(sumOf(requested.bearers.map(read))));
  return {
    id: "table-bearers",
    caption: `Who bears it: “${requested.result.option.name}”, present values, prices of ${context.priceYear}`,
    head: head(
      "Bearer",
      num("Loss without"),
      num("Loss avoided"),
      num("Pays of the program now"),
      num("Would pay in proportion"),
    ),
    rows: requested.bearers.map((each) =>
      row(
        each.name,
        num(format.money(each.lossWithout)),
        num(format.money(each.avoided)),
        num(format.money(each.paysNow)),
        num(format.money(each.proportionalShare)),
      ),
    ),
    total: row(
      "All",
      total((each) => each.lossWithout),
      total((each) => each.avoided),
      total((each) => each.paysNow),
      total((each) => each.proportionalShare),
    ),
    note: "In proportion: each bearer's part of the added program cost is its part of the loss avoided. Who should pay is for the board to decide.",
  };
}

function verdict({ result, netBenefit, benefitCostRatio }: OptionBalance, { format }: ReportContext): string {
  const size = format.money(netBenefit.abs());
  const net = netBenefit.greaterThan(0)
    ? `pays, with a net benefit of ${size}`
    : `does not pay: it costs ${size} more than it avoids`;
  const by = benefitCostRatio === undefined ? "" : ` (ratio ${ratio(benefitCostRatio)})`;
  return `“${result.option.name}” ${net} in present value${by}.`;
}
