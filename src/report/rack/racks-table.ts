import type { RackLosses, RackSummary } from "../../model/structures/hydraulic-summary.js";
import type { RackFormula } from "../../model/structures/inputs.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { percent } from "../words/format.js";
import { formulaNames } from "../words/rack-formulas.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";

const formulas: readonly RackFormula[] = ["meusburger", "kirschmer", "reclamation", "clark"];

/** The loss of each rack by four formulas, clean and if left to foul; the one that costs use is marked. */
export function racksTable(
  { format }: ReportContext,
  structures: readonly TracedStructure[],
): TableView | undefined {
  const racks = structures.flatMap(({ result }) => result.hydraulics.racks);
  if (racks.length === 0) return undefined;
  const used = formulas.filter((each) => racks.some(({ formula }) => formula === each));
  const lossCells = (losses: RackLosses, inUse: RackFormula) =>
    formulas.map((each) => num(`${each === inUse ? "• " : ""}${format.number(losses[each], "length")}`));
  const rackRows = (rack: RackSummary): RowView[] => [
    groupRow(
      `${rack.structure}: approach velocity ${format.quantity(rack.approachVelocity, "speed")}; costs by ${formulaNames[rack.formula]}`,
    ),
    row("clean", num(percent(rack.clean.blocked, 3)), ...lossCells(rack.clean, rack.formula)),
    rack.fouled
      ? row("left to foul", num(percent(rack.fouled.blocked, 3)), ...lossCells(rack.fouled, rack.formula))
      : row("left to foul", num("100%"), ...formulas.map(() => num("closed"))),
  ];
  return {
    id: "table-racks",
    caption: "Trash racks at their largest flow, clean and if left to foul",
    head: head(
      "State",
      num("Blocked"),
      ...formulas.map((each) => num(`${formulaNames[each]}, ${format.unit("length")}`)),
    ),
    rows: racks.flatMap(rackRows),
    note: `• The loss that costs stand on: ${used.map((each) => formulaNames[each]).join(", ")}. The Reclamation coefficient multiplies the velocity head through the net area, the others that of approach. Clark's was measured on clean bars and tells too little of a rack that is nearly closed. The formulas agree in order, not in digits.`,
  };
}
