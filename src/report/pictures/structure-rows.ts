import { counted } from "../../counted.js";
import { sumOf } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { structureCosts } from "../rack/infestation-view.js";
import { percent } from "../words/format.js";
import { alternativeOf, barBetween, type RowPicture, scaleOver } from "./row-picture.js";

/** Bars for which a page of the board's part has room. */
const mostBars = 9;

/** What each structure costs a year once mussels are established, the dearest first. */
export function structureRows(context: ReportContext): RowPicture {
  const { priceYear } = context;
  const format = boardMoney(context.format);
  const costs = structureCosts(context)
    .map(({ name, matureMean }) => ({ name, amount: matureMean }))
    .filter(({ amount }) => amount > 0)
    .sort((one, other) => other.amount - one.amount);
  const total = sumOf(costs.map(({ amount }) => amount));
  const shown = costs.length > mostBars ? withOthers(costs) : costs;
  const place = scaleOver(shown.map(({ amount }) => amount));
  const rows = shown.map(({ name, amount }) => ({
    name,
    value: format.money(amount),
    bars: [barBetween("rack", 0, amount, place)],
  }));
  const [largest] = costs;
  const title = largest
    ? `${largest.name} would be ${percent(largest.amount / total)} of the yearly cost of an established infestation`
    : "No structure would cost anything";
  return {
    title,
    alternative: alternativeOf(title, rows),
    rows,
    lines: [],
    note: `Per year, once mussels are established, prices of ${priceYear}. Appendix ${appendixLetter("register")} has the table, with first years and who pays; appendix ${appendixLetter("cost-lines")} the lines.`,
  };
}

interface Cost {
  readonly name: string;
  readonly amount: number;
}

function withOthers(costs: readonly Cost[]): Cost[] {
  const others = costs.slice(mostBars - 1);
  return [
    ...costs.slice(0, mostBars - 1),
    {
      name: `${counted(others.length, "other")} together`,
      amount: sumOf(others.map(({ amount }) => amount)),
    },
  ];
}
