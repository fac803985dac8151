import type { OptionResult } from "../../model/option.js";
import type { FullCostFee } from "../../model/program/fees.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { groupRow, head, num, row, type TableView } from "../words/view-types.js";

/** What one inspection costs and which fee would carry the program; absent where no option has either. */
export function unitCostsTable(context: ReportContext): TableView | undefined {
  const { format, priceYear } = context;
  const options = priced(context);
  if (options.length === 0) return undefined;
  return {
    id: "table-unit-costs",
    caption: `What one inspection costs, and the fee that would cover the program, in a year with a clean lake, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Cost before fees"),
      num("Boats checked"),
      num("Cost of one inspection"),
      num("Boats that pay"),
      num("Fees bring in"),
      num("Full-cost fee a boat"),
      num("Present fees times"),
    ),
    rows: options.map(({ result, inspection: { cost, checked, perBoat }, fee }) =>
      row(
        result.option.name,
        num(format.money(cost)),
        num(boats(checked)),
        num(perBoat === undefined ? "–" : format.rate(perBoat)),
        num(boats(fee.payers)),
        num(format.money(fee.feeRevenue)),
        num(fee.perBoat === undefined ? "none" : format.rate(fee.perBoat)),
        num(fee.factor === undefined ? "–" : significant(fee.factor, 3)),
      ),
    ),
    note: "Boats checked: those that the station meets in its open hours and looks at, however briefly, without sealed boats. One inspection: the whole cost, with outreach and administration, over them. Full-cost fee: equal for each paying boat, or all present fees times the factor, so that with other revenue they bring in what the program costs.",
  };
}

/** One sentence an option on what its fees would have to be. */
export function feeNotes(context: ReportContext): string[] {
  return priced(context).map((option) => feeNote(option, context));
}

/** Each fee as it is, in proportion and equal for all, at which fees carry the program; absent where there is no fee. */
export function feesTable(context: ReportContext): TableView | undefined {
  const { format, priceYear, comparison, infestedSince } = context;
  const options = priced(context).filter(({ result }) => result.option.fees.length > 0);
  if (options.length === 0 || infestedSince !== undefined) return undefined;
  const classes = new Map(comparison.input.boats.classes.map(({ id, name }) => [id, name]));
  return {
    id: "table-fees",
    caption: `Present fees, and fees that would cover the whole program, prices of ${priceYear}`,
    head: head(
      "Fee",
      "Who pays",
      num("Boats that pay"),
      num("Present fee"),
      num("In proportion"),
      num("Equal for all"),
    ),
    rows: options.flatMap(({ result, fee: { fees, perBoat } }) => [
      groupRow(result.option.name),
      ...fees.map(({ name, vesselClass, payers, fee, atFullCost }) =>
        row(
          name,
          vesselClass === undefined ? "All classes" : (classes.get(vesselClass) ?? vesselClass),
          num(boats(payers)),
          num(format.rate(fee)),
          num(atFullCost === undefined ? "–" : format.rate(atFullCost)),
          num(perBoat === undefined ? "–" : format.rate(perBoat)),
        ),
      ),
    ]),
    note: "Boats that pay are those left after the loss of demand, which is proportional to the fee and as the study states at its highest fee. A boat kept away by the fee is not taken off the launches.",
  };
}

/** Options that check boats or take a fee. */
const priced = ({ infestedSince, traced }: ReportContext): TracedOption[] =>
  infestedSince === undefined
    ? traced.options.filter(({ result: { option } }) => option.steps !== undefined || option.fees.length > 0)
    : [];

/** Whole boats, since a fraction of one pays nothing. */
const boats = (count: number): string => Math.round(count).toLocaleString("en-US");

function feeNote({ result, fee }: TracedOption, context: ReportContext): string {
  const { format } = context;
  const { name } = result.option;
  if (!fee.cost.greaterThan(0)) return `“${name}”: other revenue covers it; no fee is needed.`;
  if (fee.payers === 0) return `“${name}”: nobody pays, so no fee can cover it.`;
  if (fee.perBoat === undefined) return `“${name}”: no fee can cover it, since too few boats would pay.`;
  const net = (result.option.otherRevenue ?? []).length > 0 ? ", net of other revenue" : "";
  const inAll = `${format.money(fee.cost)} a year${net}`;
  const brings =
    fee.factor === undefined
      ? "at present they pay nothing"
      : `the present fees bring in ${format.money(fee.feeRevenue)}, ${percent(fee.feeRevenue.dividedBy(fee.cost).toNumber())} of it`;
  return `“${name}”: ${format.rate(fee.perBoat)} from ${payersText(fee.payersAtFullCost)} would cover the whole ${inAll}; ${brings}. ${demandText(result, fee, context)}`;
}

const payersText = (payers: number): string =>
  boats(payers) === "1" ? "the one paying boat" : `each of ${boats(payers)} paying boats`;

/** What is known of those whom such a fee keeps away. */
function demandText(
  { option: { demandLoss } }: OptionResult,
  { isBeyondStated, perBoat: equal = 0 }: FullCostFee,
  { format }: ReportContext,
): string {
  if (!demandLoss) return "This assumes no boater is deterred.";
  const stated = `${format.rate(demandLoss.fee)}, the highest fee for which the study states the loss of demand (${percent(demandLoss.loss)})`;
  if (isBeyondStated.equal)
    return `That is above ${stated}: how many boats would then still pay is beyond what was stated.`;
  return isBeyondStated.inProportion
    ? `Raised in proportion, at least one fee would be above ${stated}, and so beyond what was stated.`
    : `The ${percent((demandLoss.loss * equal) / demandLoss.fee)} of boats that this fee would keep away are left out.`;
}
