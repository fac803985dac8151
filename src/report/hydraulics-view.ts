import type {
  PipeState,
  PipeSummary,
  RackLosses,
  RackSummary,
} from "../model/structures/hydraulic-summary.js";
import type { ReportContext } from "./context.js";
import { percent, significant } from "./format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "./view-types.js";

export interface HydraulicsView {
  readonly pipes: TableView;
  readonly racks: TableView;
}

/** Every step from flow to head loss, clean and if left to foul, so that it can be checked by hand. */
export function hydraulicsView(context: ReportContext): HydraulicsView {
  const summaries = context.comparison.structures.map(({ hydraulics }) => hydraulics);
  return {
    pipes: pipesTable(
      summaries.flatMap(({ pipes }) => pipes),
      context,
    ),
    racks: racksTable(
      summaries.flatMap(({ racks }) => racks),
      context,
    ),
  };
}

const closedCells = Array.from({ length: 7 }, () => num("–"));

function pipesTable(pipes: readonly PipeSummary[], { format }: ReportContext): TableView {
  const stateRow = (name: string, state: PipeState) =>
    row(
      name,
      num(format.number(state.bore, "smallLength")),
      num(format.number(state.roughness, "smallLength")),
      num(format.number(state.velocity, "speed")),
      num(significant(state.reynolds, 3)),
      num(state.frictionFactor.toFixed(5)),
      num(format.number(state.headLoss, "length")),
      num(significant(state.equivalentC, 3)),
    );
  return {
    id: "table-pipes",
    caption: "Pipes at their largest flow, clean and if left to foul",
    head: head(
      "State",
      num(`Bore, ${format.unit("smallLength")}`),
      num(`Roughness, ${format.unit("smallLength")}`),
      num(`Velocity, ${format.unit("speed")}`),
      num("Reynolds number"),
      num("Friction factor f"),
      num(`Head loss, ${format.unit("length")}`),
      num("Same loss as C"),
    ),
    rows: pipes.flatMap((pipe): RowView[] => [
      groupRow(
        `${pipe.structure}, ${pipe.part}: ${format.quantity(pipe.flow, "flow")} through ${format.quantity(pipe.length, "length")}, ΣK ${pipe.minorLoss}; shells ${significant(pipe.shellLengthMm, 3)} mm, number × length² ${significant(pipe.cover, 3)}; flow left at the clean head loss ${percent(pipe.capacityLeft)}`,
      ),
      stateRow("clean", pipe.clean),
      pipe.fouled ? stateRow("left to foul", pipe.fouled) : row("left to foul: bore closed", ...closedCells),
    ]),
    note: "The relations are in appendix E. “Same loss as C” is the Hazen–Williams C of the same friction loss, for readers who know walls by it; it is not constant on shells.",
  };
}

function racksTable(racks: readonly RackSummary[], { format }: ReportContext): TableView {
  const stateRow = (name: string, losses: RackLosses) =>
    row(
      name,
      num(percent(losses.blocked, 3)),
      num(format.number(losses.meusburger, "length")),
      num(format.number(losses.kirschmer, "length")),
      num(format.number(losses.reclamation, "length")),
    );
  return {
    id: "table-racks",
    caption: "Trash racks at their largest flow, clean and if left to foul",
    head: head(
      "State",
      num("Blocked"),
      num(`Meusburger, ${format.unit("length")}`),
      num(`Kirschmer, ${format.unit("length")}`),
      num(`Reclamation, ${format.unit("length")}`),
    ),
    rows: racks.flatMap((rack): RowView[] => [
      groupRow(`${rack.structure}: approach velocity ${format.quantity(rack.approachVelocity, "speed")}`),
      stateRow("clean", rack.clean),
      rack.fouled
        ? stateRow("left to foul", rack.fouled)
        : row("left to foul", num("100%"), num("closed"), num("closed"), num("closed")),
    ]),
    note: "Costs use Meusburger. The Reclamation coefficient (1.45 − 0.45 R − R²) multiplies the velocity head through the net area R, the others that of approach; the three agree in order, not in digits.",
  };
}
