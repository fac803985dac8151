import { type Increment, increment } from "../model/increments.js";
import { allOptions, type ReportContext } from "./context.js";
import { oneDecimal, ratio } from "./format.js";
import { head, num, row, type TableView } from "./view-types.js";

/** Every other option against the program in force; empty where the study names none, or the one without a program. */
export function incrementsOf({ existing, comparison }: ReportContext): Increment[] {
  if (!existing) return [];
  return allOptions({ comparison })
    .filter((result) => result !== existing)
    .map((result) => increment(result, existing));
}

export function incrementsTable(context: ReportContext): TableView | undefined {
  const { existing, format, horizon, priceYear } = context;
  if (!existing) return undefined;
  return {
    id: "table-increments",
    caption: `Each option against “${existing.option.name}”, the program in force, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Added cost a year"),
      num("Added staff hours a week"),
      num(`Added cost, ${horizon} years`),
      num("Loss avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
    ),
    rows: incrementsOf(context).map((each) =>
      row(
        each.result.option.name,
        num(format.money(each.addedCostPerYear)),
        num(oneDecimal(each.addedHoursPerWeek)),
        num(format.money(each.addedProgramCost)),
        num(format.money(each.avoidedLoss)),
        num(format.money(each.netBenefit)),
        num(each.benefitCostRatio === undefined ? "–" : ratio(each.benefitCostRatio)),
      ),
    ),
    note: "A year's cost and hours are those of a clean lake and programs in full, net of fees and other revenue; hours of the staff list over 52 weeks. The other amounts are present values. A minus is saved, given up or lost.",
  };
}

/** What the option requested adds to the program in force, in one or two sentences. */
export function incrementText(context: ReportContext): string | undefined {
  const { existing, requested, horizon, format } = context;
  if (!existing) return undefined;
  const added = increment(requested.result, existing);
  const { addedCostPerYear, addedProgramCost, avoidedLoss, netBenefit } = added;
  const year = `${hoursText(added.addedHoursPerWeek)} and ${format.money(addedCostPerYear.abs())} a year ${addedCostPerYear.isNegative() ? "less" : "more"}`;
  const costs = `${addedProgramCost.isNegative() ? "saves" : "adds"} ${format.money(addedProgramCost.abs())} of cost`;
  const loss = `${avoidedLoss.isNegative() ? "adds" : "avoids"} ${format.money(avoidedLoss.abs())} of infestation cost`;
  const net = netBenefit.greaterThan(0) ? "it is worth" : "it costs";
  return `Against “${existing.option.name}”, the program in force: ${year}. Over ${horizon} years that ${costs} and ${loss}, in present value: ${net} ${format.money(netBenefit.abs())} more than going on as now.`;
}

function hoursText(hours: number): string {
  const size = oneDecimal(Math.abs(hours));
  if (size === oneDecimal(0)) return "as many staff hours";
  return `${size} ${hours < 0 ? "fewer" : "more"} staff hours a week`;
}
