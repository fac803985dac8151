import { at } from "../../lists.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { carrying } from "../print/carried-totals.js";
import { addingUp } from "../words/adding-up.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

export function yearlyTable(context: ReportContext): TableView {
  const options = allOptions(context);
  const { format, run } = context;
  const isInfested = context.infestedSince !== undefined;
  const rounded = options.map(({ expectedByYear }) =>
    addingUp(
      expectedByYear.map(({ total }) => total.toNumber()),
      1,
    ),
  );
  const rows = context.comparison.discountFactors.map((factor, year) =>
    row(
      String(run.document.money.startYear + year),
      num(factor.toFixed(4)),
      ...options.flatMap(({ infestedByYear }, option) => [
        ...(isInfested ? [] : [num(percent(at(infestedByYear, year)))]),
        num(format.exactMoney(at(at(rounded, option).parts, year))),
      ]),
    ),
  );
  return {
    id: "table-yearly",
    caption: `Expected cost of each year, program and infestation together, prices of ${context.priceYear}`,
    head: head(
      "Year",
      num("Discount factor"),
      ...options.flatMap(({ option }) =>
        isInfested ? [num(option.name)] : [num(`${option.name}: chance so far`), num("cost")],
      ),
    ),
    ...carrying(rows, {
      columns: options.map((_, option) => (isInfested ? 2 + option : 3 + 2 * option)),
      amounts: rows.map((_, year) => rounded.map(({ parts }) => at(parts, year))),
      text: format.exactMoney,
    }),
    total: row(
      "Undiscounted",
      num(""),
      ...rounded.flatMap(({ sum }) => [...(isInfested ? [] : [num("")]), num(format.exactMoney(sum))]),
    ),
    compact: true,
  };
}

export function cumulativeTable(context: ReportContext): TableView {
  const { options } = context.traced;
  return {
    id: "table-cumulative",
    caption: `Present value of all costs up to each year, prices of ${context.priceYear}`,
    head: head("Year", ...options.map(({ result }) => num(result.option.name))),
    rows: context.comparison.discountFactors.map((_, year) =>
      row(
        String(context.run.document.money.startYear + year),
        ...options.map(({ presentValueSoFar }) =>
          num(context.format.exactMoney(at(presentValueSoFar, year))),
        ),
      ),
    ),
    compact: true,
  };
}
