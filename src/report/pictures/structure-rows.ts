import { counted } from "../../counted.js";
import { sumOf } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { boardMoney } from "../board/board-money.js";
import type { ReportContext } from "../document/context.js";
import { structureCosts } from "../rack/infestation-view.js";
import { percent, printedWidth, wrapped } from "../words/format.js";
import { alternativeOf, barBetween, type RowPicture, scaleOver } from "./row-picture.js";

/** Bars for which a page of the board's part has room, and lines of all their names. */
const most = { bars: 9, lines: 12 };
/** Letters of running text in a line of a name, and of the title. */
const lineLetters = { name: 34, title: 90 };

/** What each structure costs a year once mussels are established, the dearest first. */
export function structureRows(context: ReportContext): RowPicture {
  const { priceYear } = context;
  const format = boardMoney(context.format);
  const costs = structureCosts(context)
    .map(({ name, matureMean }) => ({ name, amount: matureMean }))
    .filter(({ amount }) => amount > 0)
    .sort((one, other) => other.amount - one.amount);
  const total = sumOf(costs.map(({ amount }) => amount));
  const [largest] = costs;
  const title = largest
    ? `${largest.name} would be ${percent(largest.amount / total)} of the yearly cost of an established infestation`
    : "No structure would cost anything";
  const shown = withOthers(costs, most.lines - (linesOf(title, lineLetters.title) - 1));
  const place = scaleOver(shown.map(({ amount }) => amount));
  const rows = shown.map(({ name, amount }) => ({
    name,
    value: format.money(amount),
    bars: [barBetween("rack", 0, amount, place)],
  }));
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

const linesOf = (text: string, letters: number) => wrapped(text, letters, printedWidth).length;

/** As many as have room, and the others as one. */
function withOthers(costs: readonly Cost[], mostLines: number): readonly Cost[] {
  const lines = costs.map(({ name }) => linesOf(name, lineLetters.name));
  if (costs.length <= most.bars && sumOf(lines) <= mostLines) return costs;
  const fitting = costs.filter((_, index) => sumOf(lines.slice(0, index + 1)) < mostLines).length;
  const room = Math.max(1, Math.min(most.bars - 1, fitting));
  const others = costs.slice(room);
  return [
    ...costs.slice(0, room),
    {
      name: `${counted(others.length, "other")}${others.length === 1 ? "" : " together"}`,
      amount: sumOf(others.map(({ amount }) => amount)),
    },
  ];
}
