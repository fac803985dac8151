import { counted } from "../../counted.js";
import type { BreakEvenValues } from "../../model/break-even/break-even-values.js";
import type { OptionBalance } from "../../model/compare.js";
import { type ReportContext, tracedOf } from "../document/context.js";
import { pays, signOf } from "../words/balance-signs.js";
import { factorText, percent } from "../words/format.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { budgetToPay } from "./board-changes.js";

/** Every value at which the requested option starts or stops paying, one quantity at a time. */
export function breakEvenTable(context: ReportContext): TableView {
  const { requested, comparison, format, horizon, priceYear } = context;
  const { breakEven, result } = requested;
  const { baseline } = comparison;
  const { lossFactor } = breakEven;
  const budget = budgetToPay(requested);
  const { shareStopped } = tracedOf(context, result.option.id);
  return {
    id: "table-turns",
    caption: `Where the answer turns: “${result.option.name}”, one value at a time, prices of ${priceYear}`,
    head: head("Value", num("Here"), "The option pays", "Other such values"),
    rows: [
      breakEvenRow("Chance of infestation a year without it", threeFigures(baseline.hazard), {
        ...breakEven.hazards,
        text: threeFigures,
      }),
      breakEvenRow("Fouled boats stopped", threeFigures(shareStopped), {
        ...breakEven.stopped,
        text: threeFigures,
      }),
      row(
        "Cost of the program a year",
        num(format.money(result.programPerYear)),
        budget ? `up to ${format.money(budget)}` : noValue,
        none,
      ),
      row(
        "Loss a year, as a factor on all of it",
        num("1"),
        lossFactor === undefined ? anyOrNone(requested) : `from ${factorText(lossFactor)}`,
        none,
      ),
      breakEvenRow("Horizon", `${counted(horizon, "year")}`, {
        ...breakEven.horizons,
        text: (years) => counted(years, "year"),
      }),
    ],
    note: `All else equal. “None” is proved: the net benefit is linear in the value, moves one way with it, or was tried at every value. Elsewhere two values may lie closer together than the grid that was searched. Horizons are searched up to ${counted(horizon, "year")}.`,
  };
}

/** Where no factor on the loss turns the answer, it is the same at all of them. */
const anyOrNone = (balance: OptionBalance) =>
  pays(balance) && signOf(balance.avoidedLoss) >= 0 ? "at any" : noValue;

const threeFigures = (share: number) => percent(share, 3);
const noValue = "no such value";
const none = "none";

function breakEvenRow(
  name: string,
  studyValue: string,
  { turns, all, text }: BreakEvenValues & { readonly text: (value: number) => string },
): RowView {
  const said = turns.map(({ value, pays }) => `${pays ? "from" : "no longer from"} ${text(value)}`);
  return row(name, num(studyValue), said.join(", ") || noValue, all ? none : "none found");
}
