import { counted } from "../../counted.js";
import type { Money } from "../../model/money/decimal.js";
import type { OptionBalance } from "../../model/option-balance.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { allOptions, type ReportContext, requestedOption } from "../document/context.js";
import type { RowPicture } from "../pictures/row-picture.js";
import { waterfall } from "../pictures/waterfall.js";
import { detectionSentence } from "../ramp/detection-view.js";
import { deterrenceSentences } from "../ramp/deterrence-words.js";
import { feeNotes, unitCostsTable } from "../ramp/fees-view.js";
import { differenceTexts } from "../words/adding-up.js";
import { ratioCell } from "../words/balance-signs.js";
import { type Formatter, percent } from "../words/format.js";
import { scheduleNameOf } from "../words/option-kind.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { enteredText } from "./accounts-table.js";
import { bearersTable } from "./bearers-table.js";
import { budgetToPay, chanceCell } from "./board-changes.js";
import { breakEvenTable } from "./break-even-table.js";
import { headlineTable, meansTable } from "./headline-words.js";
import { incrementsTable } from "./increments-view.js";
import { ratesTable } from "./rates-table.js";
import { cumulativeTable, yearlyTable } from "./tables-by-year.js";
import { verdict } from "./verdict.js";

export interface ComparisonView {
  /** Absent where no odds were drawn, and where the lake is infested. */
  readonly headline: TableView | undefined;
  /** Absent where there is nothing to weigh. */
  readonly waterfall: RowPicture | undefined;
  /** The options on average in a few figures; absent without odds. */
  readonly means: TableView | undefined;
  /** What is left of the requested option without the boats that its checks keep away; empty where it counts on none. */
  readonly deterrence: string;
  /** The ratio without what staff entered of the damage; empty where they entered none. */
  readonly entered: string;
  readonly options: TableView;
  /** Absent, with the ranges, where the lake is infested and no program can avoid a loss. */
  readonly balance: TableView | undefined;
  /** Absent where the study names no program in force. */
  readonly increments: TableView | undefined;
  /** Absent, with its notes, where the lake is infested or nothing is checked and no fee taken. */
  readonly unitCosts: TableView | undefined;
  readonly feeNotes: readonly string[];
  readonly rates: TableView | undefined;
  readonly ranges: TableView | undefined;
  /** Absent where the lake is infested: nothing turns the answer. */
  readonly breakEvenTable: TableView | undefined;
  readonly yearly: TableView;
  readonly cumulative: TableView;
  readonly bearers: TableView;
  readonly verdicts: readonly string[];
  /** Absent where no option says how it watches for mussels. */
  readonly detection: string | undefined;
}

export function comparisonView(context: ReportContext): ComparisonView {
  const { requested, infestedSince } = context;
  const isInfested = infestedSince !== undefined;
  const weighed = weighedOptions(context);
  const hasRanges = !isInfested || followsSchedule(requested);
  return {
    headline: headlineTable(context),
    waterfall: hasRanges ? waterfall(context) : undefined,
    means: meansTable(context),
    entered: enteredText(context),
    deterrence: isInfested ? "" : deterrenceSentences(context, [requested]).join(" "),
    options: optionsTable(context),
    balance: balanceTable(context),
    increments: incrementsTable(context),
    unitCosts: unitCostsTable(context),
    feeNotes: feeNotes(context),
    rates: weighed.length === 0 ? undefined : ratesTable(weighed, context),
    ranges: hasRanges ? rangesTable(context) : undefined,
    breakEvenTable: isInfested ? undefined : breakEvenTable(context),
    yearly: yearlyTable(context),
    cumulative: cumulativeTable(context),
    bearers: bearersTable(context),
    detection: detectionSentence(context),
    verdicts: [
      ...(isInfested ? [infestedVerdict(weighed.length)] : []),
      ...weighed.map((option) => verdict(option, context)),
    ],
  };
}

/** Where the lake is infested, the options that can still avoid a loss. */
const weighedOptions = ({ comparison, infestedSince }: ReportContext): readonly OptionBalance[] =>
  infestedSince === undefined ? comparison.options : comparison.options.filter(followsSchedule);

const followsSchedule = ({ result }: OptionBalance) => result.option.schedule !== undefined;

function infestedVerdict(schedules: number): string {
  return schedules === 0
    ? "The lake is infested: the options differ only in what is still spent on them. No damage is avoided."
    : "The lake is infested: inspection avoids no damage. Options that follow other levels of the lake change what the mussels cost.";
}

export function optionsTable(context: ReportContext): TableView {
  const { format, horizon, priceYear } = context;
  const isInfested = context.infestedSince !== undefined;
  const follows = allOptions(context).some(({ option }) => option.schedule !== undefined);
  return {
    id: "table-options",
    caption: `Each option over ${counted(horizon, "year")}, per year, at central values, prices of ${priceYear}`,
    head: head(
      "Option",
      num(follows ? "Program and levels" : "Program"),
      num("Expected damage"),
      num("Together"),
      ...(isInfested ? [] : [num(`Infested after ${counted(horizon, "year")}`)]),
    ),
    rows: allOptions(context).map(({ option, equivalentYearly, infestedByYear }) => {
      const { program, infestation } = equivalentYearly;
      const amounts = { from: infestation.toNumber(), less: -program.toNumber() };
      const { from, difference } = differenceTexts(amounts, format);
      return row(
        option.name,
        num(differenceTexts({ from: program.toNumber(), less: -infestation.toNumber() }, format).from),
        num(from),
        num(difference),
        ...(isInfested ? [] : [num(percent(infestedByYear.at(-1) ?? 0))]),
      );
    }),
    note: optionsNote(context),
  };
}

function optionsNote(context: ReportContext): string {
  const options = allOptions(context);
  const shrinks =
    context.infestedSince === undefined && options.some(({ option }) => option.steps !== undefined)
      ? " A program's amount is below its yearly budget because it shrinks or ends once the lake is infested."
      : "";
  const when = context.infestedSince === undefined ? " once the lake is infested" : "";
  const follows = options.flatMap((result) => {
    const followed = scheduleNameOf(result);
    return followed === undefined ? [] : [` “${result.option.name}” follows “${followed}”${when}.`];
  });
  const means =
    follows.length === 0
      ? ""
      : " “Program and levels” holds what following it costs. “Expected damage” holds what it changes of upkeep and losses.";
  return `Equal yearly amounts with the same present value.${shrinks}${follows.join("")}${means}`;
}

export function balanceTable(context: ReportContext): TableView | undefined {
  const options = weighedOptions(context);
  if (options.length === 0) return undefined;
  const { comparison, format, infestedSince } = context;
  const breakEven = (option: OptionBalance) =>
    infestedSince === undefined
      ? [num(chanceCell(option)), num(budgetText(budgetToPay(option), format))]
      : [];
  return {
    id: "table-balance",
    caption: `Each option compared with “${comparison.baseline.option.name}”, present values at central values, prices of ${context.priceYear}`,
    head: head(
      "Option",
      num("Added cost"),
      num("Damage avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
      ...(infestedSince === undefined
        ? [num("Break-even chance a year"), num("Break-even budget a year")]
        : []),
    ),
    rows: options.map((option) => {
      const { addedProgramCost, avoidedLoss } = option;
      const amounts = { from: avoidedLoss.toNumber(), less: addedProgramCost.toNumber() };
      const { from, less, difference } = differenceTexts(amounts, format);
      return row(
        option.result.option.name,
        ...[less, from, difference].map(num),
        num(ratioCell(option, comparison.discountFactors)),
        ...breakEven(option),
      );
    }),
    note:
      infestedSince === undefined
        ? "Break-even chance: yearly chance of infestation at which the option breaks even. Break-even budget: the yearly program cost, apart from that of following a schedule, that the damage avoided would cover."
        : "Damage avoided: upkeep and losses that the other levels save.",
  };
}

/** The requested option with one group of assumptions at a time at its low and high values. */
function rangesTable(context: ReportContext): TableView {
  const { run, format } = context;
  const cells = (comparison: typeof context.comparison) => {
    const requested = requestedOption({ document: run.document, comparison });
    return [
      num(format.money(requested.netBenefit)),
      num(ratioCell(requested, comparison.discountFactors)),
    ] as const;
  };
  return {
    id: "table-ranges",
    caption: `How the result for “${context.requested.result.option.name}” changes when one group of assumptions at a time is low or high`,
    head: head(
      "What is changed",
      num("Net benefit, low"),
      num("Ratio, low"),
      num("Net benefit, high"),
      num("Ratio, high"),
    ),
    rows: run.ranges().map(({ name, low, high }) => row(name, ...cells(low), ...cells(high))),
    note: `Low and high are the ends of each assumption's stated range (appendix ${appendixLetter("assumptions")}). One group at a time, exact model; no probabilities are attached.`,
  };
}

const budgetText = (budget: Money | undefined, { money }: Pick<Formatter, "money">) =>
  budget ? money(budget) : "none";
