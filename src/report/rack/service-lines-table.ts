import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Cooling-water and other small lines: what the head drives through them, and what they still do if left to foul. */
export function serviceLinesTable(
  { format }: ReportContext,
  structures: readonly TracedStructure[],
): TableView | undefined {
  const rows = structures.flatMap(({ result, serviceLines }) =>
    serviceLines.map(({ name, count, line, cleanFlow, fouledFlow, share }) =>
      row(
        `${result.structure.name}, ${name}`,
        num(String(count)),
        num(format.number(line.availableHead, "length")),
        num(format.number(line.requiredFlow, "flow")),
        num(format.number(cleanFlow, "flow")),
        num(format.number(fouledFlow, "flow")),
        num(percent(share, 3)),
        line.exchanger ? "heat" : "water",
      ),
    ),
  );
  if (rows.length === 0) return undefined;
  return {
    id: "table-service-lines",
    caption: "Service lines, clean and if left to foul",
    head: head(
      "Line",
      num("Lines alike"),
      num(`Head to spend, ${format.unit("length")}`),
      num(`Flow needed, ${format.unit("flow")}`),
      num(`Driven clean, ${format.unit("flow")}`),
      num(`Driven fouled, ${format.unit("flow")}`),
      num("Service left"),
      "Of what",
    ),
    rows,
    note: "Service left: water delivered, at most the need, or where a heat exchanger is given the heat carried off, over the same when clean.",
  };
}
