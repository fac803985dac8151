import { counted } from "../../counted.js";
import type { Increment } from "../../model/increments.js";
import { Money } from "../../model/money/decimal.js";
import type { TracedResult } from "../../study/traced/traced.js";
import { type ReportContext, tracedOf } from "../document/context.js";
import { headlineOption } from "../document/headline.js";
import { differenceTexts } from "../words/adding-up.js";
import { ratioCell, signOf } from "../words/balance-signs.js";
import { type Formatter, significant } from "../words/format.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";

/** Every other option against the program in force; empty where the study names none, or the one without a program. */
export const incrementsOf = ({ existing, options }: TracedResult): Increment[] =>
  options.flatMap(({ result, increment }) => (increment && result !== existing ? [increment] : []));

/** Present values of an option against the program in force. */
type Added = Pick<Increment, "addedProgramCost" | "avoidedLoss" | "netBenefit" | "benefitCostRatio">;

/** On average by the headline, whose means add up; at central values where there is none. */
function addedOf(each: Increment, { headline, existing }: ReportContext): Added {
  if (!headline || !existing) return each;
  const means = (id: string) => headlineOption(headline, id).balance ?? noBalance;
  const [own, before] = [means(each.result.option.id), means(existing.option.id)];
  const [addedCost, avoided] = [own.addedCost - before.addedCost, own.avoidedLoss - before.avoidedLoss];
  return {
    addedProgramCost: new Money(addedCost),
    avoidedLoss: new Money(avoided),
    netBenefit: new Money(own.netBenefit - before.netBenefit),
    benefitCostRatio: addedCost > 0 ? avoided / addedCost : undefined,
  };
}

/** The option without a program, against itself. */
const noBalance = { addedCost: 0, avoidedLoss: 0, netBenefit: 0 };

export function incrementsTable(context: ReportContext): TableView | undefined {
  const { existing, horizon, priceYear } = context;
  if (!existing) return undefined;
  return {
    id: "table-increments",
    caption: `Each option compared with “${existing.option.name}”, the current program, ${context.headline ? "on average" : "at central values"}, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Added cost a year"),
      num("Added staff hours a year"),
      num(`Added cost, ${counted(horizon, "year")}`),
      num("Damage avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
    ),
    rows: incrementsOf(context.traced).map((each) => incrementRow(each, context)),
    note: "A year's cost and hours are those of a clean lake and programs in full, net of fees and other revenue; hours of the staff list. The other amounts are present values. A negative cost is saved, negative damage avoided is damage added.",
  };
}

function incrementRow(each: Increment, context: ReportContext): RowView {
  const { format, comparison } = context;
  const added = addedOf(each, context);
  const amounts = { from: added.avoidedLoss.toNumber(), less: added.addedProgramCost.toNumber() };
  const { from, less, difference } = differenceTexts(amounts, format);
  return row(
    each.result.option.name,
    num(format.money(each.addedCostPerYear)),
    num(wholeHours(each.addedHoursPerYear)),
    ...[less, from, difference].map(num),
    num(ratioCell(added, comparison.discountFactors)),
  );
}

/** What the option requested adds to the program in force, in one or two sentences. */
export function incrementText(context: ReportContext): string | undefined {
  const { existing, requested, horizon, format, headline } = context;
  const added = tracedOf(context, requested.result.option.id).increment;
  if (!existing || !added) return undefined;
  const year = hoursText(added.addedHoursPerYear);
  const net = netText(addedOf(added, context).netBenefit, format);
  return `Compared with “${existing.option.name}”, the current program, it takes ${year} and, over ${counted(horizon, "year")}, has ${net}${headline ? " on average" : ", at central values"}.`;
}

function netText(net: Money, { money }: Formatter): string {
  return {
    [-1]: `a net cost of ${money(net.abs())}`,
    0: "no net cost",
    1: `a net benefit of ${money(net)}`,
  }[signOf(net)];
}

const wholeHours = (hours: number) => significant(Math.round(hours), 9);

function hoursText(hours: number): string {
  const size = wholeHours(Math.abs(hours));
  if (size === wholeHours(0)) return "as many staff hours";
  return `${size} ${hours < 0 ? "fewer" : "more"} staff hours a year`;
}
