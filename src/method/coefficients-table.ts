import type { Assumption, AssumptionSet } from "../assumptions/entry.js";
import { breakable, rangeText, unitText } from "../report/words/assumption-text.js";
import { percent } from "../report/words/format.js";
import { head, row, type TableView } from "../report/words/view-types.js";

/** Every assumption of the program with its origin; what a study uses of them, and how, stands in its report. */
export function coefficientsTable({ entries }: AssumptionSet): TableView {
  return {
    id: "table-coefficients",
    caption: "Every assumption of the program, with its origin",
    head: head("Assumption", "Value (low–high), unit", "Basis", "Source and note"),
    rows: [...entries.values()].sort(byId).map(entryRow),
    note: "Values between low and high are drawn by a beta-PERT distribution where no other is named; the low and the high of a normal or lognormal one are its 10th and 90th percentiles. “Judged” means that the project's authors found no published value: replace it with the operator's own.",
    compact: true,
  };
}

const byId = ({ id: one }: Assumption, { id: other }: Assumption) => (one < other ? -1 : 1);

const entryRow = (entry: Assumption) =>
  row(
    breakable(entry.id),
    `${entry.value} (${rangeText(entry)}) ${unitText(entry)}`,
    entry.basis,
    [`[${entry.source}]`, entry.note].filter(Boolean).join(" "),
  );

/** Federal water-planning rates by the notices that set them. */
export function planningRatesTable({ planningRates }: AssumptionSet): TableView {
  return {
    id: "table-planning-rates",
    caption: "Federal water-planning rates by fiscal year",
    head: head("Fiscal year", "Rate", "Notice", "Basis"),
    rows: [...planningRates.values()].map(({ fiscalYear, rate, notice, basis }) =>
      row(String(fiscalYear), percent(rate, 4), notice, basis),
    ),
    note: "A year that is not here is computed by the quarter-point rule, and its report says so.",
    compact: true,
  };
}
