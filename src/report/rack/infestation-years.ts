import { appendixLetter } from "../../study/format/report-schema.js";
import type { InfestationYear } from "../../study/traced/infestation-years.js";
import type { ReportContext } from "../document/context.js";
import { carrying } from "../print/carried-totals.js";
import { addingUp } from "../words/adding-up.js";
import { type Cell, head, num, row, type TableView } from "../words/view-types.js";

/** Cost in each year since establishment, and what a unit of it weighs in the present value without a program. */
export function byYearTable(context: ReportContext): TableView {
  const { comparison, traced, format } = context;
  const { weights, containment } = comparison.baseline;
  const isHidden = weights.unnoticed.some((weight) => weight > 0);
  const { heads, note, cells } = isHidden ? partlyUnnoticed(context) : noticedAtOnce(context);
  const attempts = containment === undefined ? [] : [containment.presentValue.toNumber()];
  const { parts, sum } = addingUp([...traced.years.map(({ presentValue }) => presentValue), ...attempts], 1);
  const empty = heads.map(() => num(""));
  const columns = [heads.length + 1];
  const rows = parts.map((part, place) => {
    const year = traced.years[place];
    const before = year
      ? [String(place + 1), num(year.density.toFixed(2)), ...cells(year)]
      : ["Eradication attempts", ...empty];
    return row(...before, num(format.exactMoney(part)));
  });
  return {
    id: "table-by-year",
    caption: `Cost of an infestation by year ${sinceText(context)}, prices of ${context.priceYear}`,
    head: head("Year", num("Density, share of capacity"), ...heads),
    note: `${note}${risesNote(context)}`,
    ...carrying(rows, { columns, amounts: parts.map((part) => [part]), text: format.exactMoney }),
    total: row("Sum", ...empty, num(format.exactMoney(sum))),
    compact: true,
  };
}

const sinceText = ({ infestedSince }: ReportContext) =>
  infestedSince === undefined ? "since establishment" : "of this budget";

/** The columns of a table of years before its weighed amounts, and what it says of them. */
interface Years {
  readonly heads: readonly Cell[];
  readonly note: string;
  readonly cells: (year: InfestationYear) => readonly Cell[];
}

function noticedAtOnce(context: ReportContext): Years {
  const { format } = context;
  const isRising = context.comparison.baseline.weights.rising.size > 0;
  return {
    heads: [num("All structures"), num("Weight"), num(isRising ? "Weighted, with rises" : "Amount × weight")],
    cells: ({ cost, noticedWeight }) => [num(format.exactMoney(cost)), num(noticedWeight.toFixed(4))],
    note: "Weight: sum over the years of the horizon of the chance that establishment was that long ago, times the discount factor, without a program.",
  };
}

/** While nobody knows of the mussels, losses count alone, with a weight of their own. */
function partlyUnnoticed(context: ReportContext): Years {
  const { format } = context;
  const isRising = context.comparison.baseline.weights.rising.size > 0;
  return {
    heads: [
      num("All costs, once detected"),
      num("Weight, once detected"),
      num("Losses alone, before"),
      num("Weight, before"),
      num(isRising ? "Weighted, with rises" : "Amounts × weights"),
    ],
    cells: ({ cost, noticedWeight, losses, unnoticedWeight }) => [
      num(format.exactMoney(cost)),
      num(noticedWeight.toFixed(4)),
      num(format.exactMoney(losses)),
      num(unnoticedWeight.toFixed(4)),
    ],
    note: "Weights: sums over the years of the horizon of the chance that establishment was that long ago and mussels are known, or not, times the discount factor, without a program. Once they are detected, all costs count; before, losses alone.",
  };
}

function risesNote({ comparison }: ReportContext): string {
  return comparison.baseline.weights.rising.size === 0
    ? ""
    : ` Costs whose prices rise faster or slower than inflation have weights of their own, with the rise of each year; so does appendix ${appendixLetter("cost-lines")}.`;
}
