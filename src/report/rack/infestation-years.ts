import { at } from "../../lists.js";
import { presentValueByAge } from "../../model/present-value.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { ReportContext } from "../document/context.js";
import { carrying } from "../print/carried.js";
import { addingUp } from "../words/adding-up.js";
import { type Cell, head, num, row, type TableView } from "../words/view-types.js";

/** Cost in each year since establishment, and what a unit of it weighs in the present value without a program. */
export function byYearTable(context: ReportContext): TableView {
  const { comparison, format } = context;
  const since = context.infestedSince === undefined ? "since establishment" : "of this budget";
  const isHidden = comparison.baseline.weights.unnoticed.some((weight) => weight > 0);
  const years = isHidden ? partlyUnnoticed(context) : noticedAtOnce(context);
  const { containment } = comparison.baseline;
  const attempts = containment === undefined ? [] : [containment.presentValue.toNumber()];
  const { parts, sum } = addingUp([...years.values, ...attempts], 1);
  const last = years.head.length - 1;
  const empty = Array.from({ length: last - 1 }, () => num(""));
  const rows = parts.map((part, place) =>
    row(...(years.cells[place] ?? ["Attempts to be rid of it", ...empty]), num(format.exactMoney(part))),
  );
  return {
    id: "table-by-year",
    caption: `Cost of an infestation by year ${since}, prices of ${context.priceYear}`,
    head: years.head,
    note: years.note,
    ...carrying(rows, { columns: [last], amounts: parts.map((part) => [part]), text: format.exactMoney }),
    total: row("Sum", ...empty, num(format.exactMoney(sum))),
    compact: true,
  };
}

interface Years {
  readonly head: TableView["head"];
  readonly note: string;
  /** Of each year, the cells before its weighed amount. */
  readonly cells: ReadonlyArray<readonly Cell[]>;
  readonly values: readonly number[];
}

function noticedAtOnce(context: ReportContext): Years {
  const { comparison, format, horizon } = context;
  const { weights } = comparison.baseline;
  const values = presentValueByAge(comparison.infestation, weights);
  return {
    head: head(
      "Year",
      num("Density, share of capacity"),
      num("All structures"),
      num("Weight"),
      num(weights.rising.size === 0 ? "Amount × weight" : "Weighed, with rises"),
    ),
    values: values.map(Number),
    cells: Array.from({ length: horizon }, (_, year) => {
      const amount = at(comparison.infestation.byYear, year);
      return [
        String(year + 1),
        num(at(comparison.lake.densityByYear, year).toFixed(2)),
        num(format.exactMoney(amount)),
        num(at(weights.noticed, year).toFixed(4)),
      ];
    }),
    note: `Weight: sum over the years of the horizon of the chance that establishment was that long ago, times the discount factor, without a program.${risesNote(context)}`,
  };
}

/** While nobody knows of the mussels, losses count alone, with a weight of their own. */
function partlyUnnoticed(context: ReportContext): Years {
  const { comparison, format, horizon } = context;
  const { weights } = comparison.baseline;
  const values = presentValueByAge(comparison.infestation, weights);
  return {
    head: head(
      "Year",
      num("Density, share of capacity"),
      num("All structures, noticed"),
      num("Weight, noticed"),
      num("Losses alone, unnoticed"),
      num("Weight, unnoticed"),
      num(weights.rising.size === 0 ? "Amounts × weights" : "Weighed, with rises"),
    ),
    values: values.map(Number),
    cells: Array.from({ length: horizon }, (_, year) => {
      const amount = at(comparison.infestation.byYear, year);
      const losses = at(comparison.infestation.harm, year);
      const [noticed, unnoticed] = [at(weights.noticed, year), at(weights.unnoticed, year)];
      return [
        String(year + 1),
        num(at(comparison.lake.densityByYear, year).toFixed(2)),
        num(format.exactMoney(amount)),
        num(noticed.toFixed(4)),
        num(format.exactMoney(losses)),
        num(unnoticed.toFixed(4)),
      ];
    }),
    note: `Weights: sums over the years of the horizon of the chance that establishment was that long ago and mussels are known, or not, times the discount factor, without a program. Noticed, all costs count; unnoticed, losses alone.${risesNote(context)}`,
  };
}

function risesNote({ comparison }: ReportContext): string {
  return comparison.baseline.weights.rising.size === 0
    ? ""
    : ` Costs whose prices rise otherwise than prices in general weigh by their own weights, with the rise in each year; so does appendix ${appendixLetter("cost-lines")}.`;
}
