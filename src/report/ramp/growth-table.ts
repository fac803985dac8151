import { at } from "../../lists.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** How programs grow in their first years; absent where all run in full from the start, or the lake is infested. */
export function growthTable(context: ReportContext): TableView | undefined {
  const { comparison, infestedSince } = context;
  const { startYear } = comparison.input.money;
  const rows = allOptions(context).flatMap(({ option, reachingByYear }) =>
    option.rampUp.map(({ reach, cost }, year) =>
      row(
        option.name,
        String(startYear + year),
        num(percent(reach)),
        num(percent(cost)),
        num(significant(at(reachingByYear, year).launches, 3)),
      ),
    ),
  );
  if (rows.length === 0 || infestedSince !== undefined) return undefined;
  return {
    id: "table-growth",
    caption: "How a program grows in its first years",
    head: head(
      "Option",
      "Year",
      num("Of the boats that it will meet"),
      num("Of its yearly cost"),
      num("Fouled boats that slip through"),
    ),
    rows,
    note: "In full from the next year on. Coverage and deterrence of a year are this share of those in full; chances of infestation and costs of the comparison follow it.",
  };
}
