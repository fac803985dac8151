import { at } from "../../lists.js";
import type { PumpRun } from "../../model/hydraulics/pump.js";
import type { PumpSummary } from "../../model/structures/pump-summary.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";
import { monthName } from "../words/month-name.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";

/** Pumps known by their curve at the largest demand: where they run, clean and if the conduit is left to foul. */
export function pumpsTable(
  { comparison, format }: ReportContext,
  structures: readonly TracedStructure[],
): TableView | undefined {
  const pumps = structures.flatMap(({ result }) => result.hydraulics.pumps);
  if (pumps.length === 0) return undefined;
  const { levelLabel } = at(comparison.schedules[0].contexts, 0);
  const stateRow = (name: string, { point, speed, delivered }: PumpRun): RowView =>
    row(
      name,
      num(format.number(point.flow, "flow")),
      num(format.number(point.head, "length")),
      num(percent(speed, 3)),
      num(format.number(delivered, "flow")),
    );
  const rows = (pump: PumpSummary): RowView[] => [
    groupRow(
      `${pump.structure}, ${kinds[pump.control]}: the demand of ${monthName(pump.month)}, ${format.quantity(pump.design.flow, "flow")}, needs ${format.quantity(pump.design.head, "length")} through the clean conduit; head to spare at full speed ${format.quantity(pump.margin, "length")}; full-speed flow left when fouled ${percent(pump.capacityLeft)}`,
    ),
    stateRow("clean", pump.clean),
    stateRow("left to foul", pump.fouled),
  ];
  return {
    id: "table-pumps",
    caption: "Pumps known by their curve at the largest demand, clean and if the conduit is left to foul",
    head: head(
      "State",
      num(`Flow while it runs, ${format.unit("flow")}`),
      num(`Head, ${format.unit("length")}`),
      num("Speed over full speed"),
      num(`Delivered, mean, ${format.unit("flow")}`),
    ),
    rows: pumps.flatMap(rows),
    note: `The lake stands at the month's mean level${levelLabel && `, here that${levelLabel}, the first year of the record`}. An on-off pump stops when the demand is met; one of variable speed slows down to it.`,
  };
}

const kinds: Readonly<Record<PumpSummary["control"], string>> = {
  "on-off": "on-off pump",
  "variable-speed": "pump of variable speed",
};
