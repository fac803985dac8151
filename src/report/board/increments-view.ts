import { counted } from "../../counted.js";
import type { Increment } from "../../model/increments.js";
import type { Money } from "../../model/money/decimal.js";
import type { TracedResult } from "../../study/traced/traced.js";
import { type ReportContext, tracedOf } from "../document/context.js";
import { ratioCell, signOf } from "../words/balance-signs.js";
import { type Formatter, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Every other option against the program in force; empty where the study names none, or the one without a program. */
export const incrementsOf = ({ existing, options }: TracedResult): Increment[] =>
  options.flatMap(({ result, increment }) => (increment && result !== existing ? [increment] : []));

export function incrementsTable(context: ReportContext): TableView | undefined {
  const { existing, format, horizon, priceYear } = context;
  if (!existing) return undefined;
  return {
    id: "table-increments",
    caption: `Each option against “${existing.option.name}”, the program in force, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Added cost a year"),
      num("Added staff hours a year"),
      num(`Added cost, ${counted(horizon, "year")}`),
      num("Loss avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
    ),
    rows: incrementsOf(context.traced).map((each) =>
      row(
        each.result.option.name,
        num(format.money(each.addedCostPerYear)),
        num(wholeHours(each.addedHoursPerYear)),
        num(format.money(each.addedProgramCost)),
        num(format.money(each.avoidedLoss)),
        num(format.money(each.netBenefit)),
        num(ratioCell(each, context.comparison.discountFactors)),
      ),
    ),
    note: "A year's cost and hours are those of a clean lake and programs in full, net of fees and other revenue; hours of the staff list. The other amounts are present values. A minus is saved, given up or lost.",
  };
}

/** What the option requested adds to the program in force, in one or two sentences. */
export function incrementText(context: ReportContext): string | undefined {
  const { existing, requested, horizon, format, headline } = context;
  const added = tracedOf(context, requested.result.option.id).increment;
  if (!existing || !added) return undefined;
  const { addedCostPerYear, addedProgramCost, avoidedLoss, netBenefit } = added;
  const year = `${hoursText(added.addedHoursPerYear)} and ${yearText(addedCostPerYear, format)}`;
  const costs = amountText(addedProgramCost, { more: "adds", less: "saves", of: "cost" }, format);
  const loss = amountText(avoidedLoss, { more: "avoids", less: "adds", of: "infestation cost" }, format);
  return `Against “${existing.option.name}”, the program in force: ${year}. Over ${counted(horizon, "year")}${headline ? ", at central values," : ""} that ${costs} and ${loss}, in present value: ${netText(netBenefit, format)} going on as now.`;
}

function yearText(cost: Money, { money }: Formatter): string {
  return {
    [-1]: `${money(cost.abs())} a year less`,
    0: "no more money a year",
    1: `${money(cost)} a year more`,
  }[signOf(cost)];
}

function amountText(
  amount: Money,
  { more, less, of }: { readonly more: string; readonly less: string; readonly of: string },
  { money }: Formatter,
): string {
  return {
    [-1]: `${less} ${money(amount.abs())} of ${of}`,
    0: `${more} no ${of}`,
    1: `${more} ${money(amount)} of ${of}`,
  }[signOf(amount)];
}

function netText(net: Money, { money }: Formatter): string {
  return {
    [-1]: `it costs ${money(net.abs())} more than`,
    0: "it comes to the same as",
    1: `it is worth ${money(net)} more than`,
  }[signOf(net)];
}

const wholeHours = (hours: number) => significant(Math.round(hours), 9);

function hoursText(hours: number): string {
  const size = wholeHours(Math.abs(hours));
  if (size === wholeHours(0)) return "as many staff hours";
  return `${size} ${hours < 0 ? "fewer" : "more"} staff hours a year`;
}
