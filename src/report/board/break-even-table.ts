import { counted } from "../../counted.js";
import type { BreakEvenValues } from "../../model/break-even/break-even-values.js";
import type { OptionBalance } from "../../model/option-balance.js";
import { type ReportContext, tracedOf } from "../document/context.js";
import { pays, signOf } from "../words/balance-signs.js";
import { factorText, percent } from "../words/format.js";
import { head, num, type RowView, row, type TableView } from "../words/view-types.js";
import { budgetToPay } from "./board-changes.js";

/** Every value at which the requested option starts or stops paying, one quantity at a time, with what was searched. */
export function breakEvenTable(context: ReportContext): TableView {
  const { requested, comparison, format, horizon, priceYear } = context;
  const { breakEven, result } = requested;
  const { baseline } = comparison;
  const { lossFactor } = breakEven;
  const budget = budgetToPay(requested);
  const { shareStopped } = tracedOf(context, result.option.id);
  return {
    id: "table-turns",
    caption: `Break-even values of “${result.option.name}”, one at a time, at central values, prices of ${priceYear}`,
    head: head("Value", num("Estimate"), "The option pays", "Other such values"),
    rows: [
      breakEvenRow("Chance of infestation a year without it", threeFigures(baseline.hazard), {
        ...breakEven.hazards,
        text: threeFigures,
        searched: "any chance a year",
      }),
      breakEvenRow("Fouled boats stopped", threeFigures(shareStopped), {
        ...breakEven.stopped,
        text: threeFigures,
        searched: "none to all of them",
      }),
      row(
        "Cost of the program a year",
        num(format.money(result.programPerYear)),
        budget ? `up to ${format.money(budget)}` : "at no cost above zero",
        none,
      ),
      row(
        "Damage, as a factor on all of it",
        num("1"),
        lossFactor === undefined ? anyOrNone(requested) : `from ${factorText(lossFactor)} the estimate`,
        none,
      ),
      breakEvenRow("Horizon", `${counted(horizon, "year")}`, {
        ...breakEven.horizons,
        text: (years) => counted(years, "year"),
        searched: `up to ${counted(horizon, "year")}`,
      }),
    ],
    note: `All else equal. Horizons are searched up to that of the study, ${counted(horizon, "year")}: a longer one may change the answer.`,
  };
}

/** Where no factor on the damage changes the answer, it is the same at all of them. */
const anyOrNone = (balance: OptionBalance) =>
  pays(balance) && signOf(balance.avoidedLoss) >= 0 ? "at any" : "at none";

const threeFigures = (share: number) => percent(share, 3);
const none = "none";

/** Where an option pays, by the values at which that begins or ends. */
function rangesPaid(turns: BreakEvenValues["turns"], text: (value: number) => string): string[] {
  const [first, second] = turns;
  return turns.length === 2 && first?.pays && second && !second.pays
    ? [`between ${text(first.value)} and ${text(second.value)}`]
    : turns.map(({ value, pays }) => `${pays ? "from" : "not from"} ${text(value)}`);
}

function breakEvenRow(
  name: string,
  studyValue: string,
  {
    turns,
    all,
    text,
    searched,
  }: BreakEvenValues & { readonly text: (value: number) => string; readonly searched: string },
): RowView {
  const said = rangesPaid(turns, text);
  return row(
    name,
    num(studyValue),
    said.join(", ") || `no such value; searched: ${searched}`,
    all ? none : "none found",
  );
}
