import { at } from "../model/lake/calendar.js";
import { presentValueByAge } from "../model/present-value.js";
import type { ReportContext } from "./context.js";
import { head, num, type RowView, row, type TableView } from "./view-types.js";

/** Cost in each year since establishment, and what a unit of it weighs in the present value without a program. */
export function byYearTable(context: ReportContext): TableView {
  const { comparison, format } = context;
  const since = context.infestedSince === undefined ? "since establishment" : "of this budget";
  const isHidden = comparison.baseline.weights.unnoticed.some((weight) => weight > 0);
  const years = isHidden ? partlyUnnoticed(context) : noticedAtOnce(context);
  return {
    id: "table-by-year",
    caption: `Cost of an infestation by year ${since}, prices of ${context.priceYear}`,
    ...years,
    rows: [...years.rows, ...attemptsRow(context, years.head.length)],
    total: row(
      "Sum",
      ...Array.from({ length: years.head.length - 2 }, () => num("")),
      num(format.exactMoney(comparison.baseline.presentValue.infestation)),
    ),
    compact: true,
  };
}

type Years = Pick<TableView, "head" | "rows"> & { readonly note: string };

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
    rows: Array.from({ length: horizon }, (_, year) => {
      const amount = at(comparison.infestation.byYear, year);
      return row(
        String(year + 1),
        num(at(comparison.lake.densityByYear, year).toFixed(2)),
        num(format.exactMoney(amount)),
        num(at(weights.noticed, year).toFixed(4)),
        num(format.exactMoney(at(values, year))),
      );
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
    rows: Array.from({ length: horizon }, (_, year) => {
      const amount = at(comparison.infestation.byYear, year);
      const losses = at(comparison.infestation.harm, year);
      const [noticed, unnoticed] = [at(weights.noticed, year), at(weights.unnoticed, year)];
      return row(
        String(year + 1),
        num(at(comparison.lake.densityByYear, year).toFixed(2)),
        num(format.exactMoney(amount)),
        num(noticed.toFixed(4)),
        num(format.exactMoney(losses)),
        num(unnoticed.toFixed(4)),
        num(format.exactMoney(at(values, year))),
      );
    }),
    note: `Weights: sums over the years of the horizon of the chance that establishment was that long ago and mussels are known, or not, times the discount factor, without a program. Noticed, all costs count; unnoticed, losses alone.${risesNote(context)}`,
  };
}

function risesNote({ comparison }: ReportContext): string {
  return comparison.baseline.weights.rising.size === 0
    ? ""
    : " Costs whose prices rise otherwise than prices in general weigh by their own weights, with the rise in each year; so does appendix A.";
}

function attemptsRow({ comparison, format }: ReportContext, columns: number): RowView[] {
  const { containment } = comparison.baseline;
  if (containment === undefined) return [];
  const empty = Array.from({ length: columns - 2 }, () => num(""));
  return [row("Attempts to be rid of it", ...empty, num(format.exactMoney(containment.presentValue)))];
}
