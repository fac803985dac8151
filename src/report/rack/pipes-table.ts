import type { PipeState, PipeSummary } from "../../model/structures/hydraulic-summary.js";
import type { Pipe } from "../../model/structures/inputs.js";
import type { TracedStructure } from "../../study/traced/traced-structure.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { groupRow, head, num, type RowView, row, type TableView } from "../words/view-types.js";

/** Roughness over bore up to which Colebrook–White is used by convention, and where the model stops counting more. */
const usualRoughness = 1 / 20;
const mostRoughness = 1 / 2;

/** Every step from flow to head loss of each pipe, clean and if left to foul. */
export function pipesTable(
  context: ReportContext,
  structures = context.traced.structures,
): TableView | undefined {
  const { format } = context;
  const rows = structures.flatMap((structure) => structureRows(structure, context));
  if (rows.length === 0) return undefined;
  return {
    id: "table-pipes",
    caption: "Pipes at their largest flow, clean and if left to foul",
    head: head(
      "State",
      num(`Bore, ${format.unit("smallLength")}`),
      num(`Roughness, ${format.unit("smallLength")}`),
      num(`Velocity, ${format.unit("speed")}`),
      num("Reynolds number"),
      "Flow",
      num("Friction factor f"),
      num(`Head loss, ${format.unit("length")}`),
      num("Same loss as C"),
    ),
    rows,
    note: notes(structures),
  };
}

function structureRows(structure: TracedStructure, context: ReportContext): RowView[] {
  return structure.result.hydraulics.pipes.flatMap((pipe): RowView[] => [
    groupRow(heading(pipe, pipeOf(structure, pipe.part), context)),
    stateRow("clean", pipe.clean, context),
    pipe.fouled
      ? stateRow("left to foul", pipe.fouled, context)
      : row("left to foul: bore closed", ...closedCells),
  ]);
}

const closedCells = [num("–"), num("–"), num("–"), num("–"), "–", num("–"), num("–"), num("–")];

function heading(pipe: PipeSummary, entered: Pipe | undefined, { format }: ReportContext): string {
  const c = entered?.hazenWilliamsC;
  const wall = c === undefined ? "wall by its roughness" : `wall by Hazen–Williams C ${c} while clean`;
  return `${pipe.structure}, ${pipe.part}: ${format.quantity(pipe.flow, "flow")} through ${format.quantity(pipe.length, "length")}, ΣK ${pipe.minorLoss}; ${wall}; shells ${significant(pipe.shellLengthMm, 3)} mm, number × length² ${significant(pipe.cover, 3)}; flow left at the clean head loss ${percent(pipe.capacityLeft)}`;
}

const pipeOf = ({ pipes }: TracedStructure, part: string): Pipe | undefined =>
  pipes.find(({ name }) => name === part)?.pipe;

function stateRow(name: string, state: PipeState, { format }: ReportContext): RowView {
  return row(
    name,
    num(format.number(state.bore, "smallLength")),
    num(`${roughnessMark(state)}${format.number(state.roughness, "smallLength")}`),
    num(format.number(state.velocity, "speed")),
    num(significant(state.reynolds, 3)),
    state.regime,
    num(state.frictionFactor.toFixed(5)),
    num(format.number(state.headLoss, "length")),
    num(significant(state.equivalentC, 3)),
  );
}

function roughnessMark({ roughness, bore }: PipeState): "" | "† " | "‡ " {
  const relative = roughness / bore;
  if (relative > mostRoughness) return "‡ ";
  return relative > usualRoughness ? "† " : "";
}

function notes(structures: readonly TracedStructure[]): string {
  const pipes = structures.flatMap((structure) =>
    structure.result.hydraulics.pipes.map((pipe) => ({ pipe, entered: pipeOf(structure, pipe.part) })),
  );
  const states = pipes.flatMap(({ pipe }) => [pipe.clean, ...(pipe.fouled ? [pipe.fouled] : [])]);
  const has = (mark: string) => states.some((state) => roughnessMark(state) === mark);
  const isAnyByC = pipes.some(({ entered }) => entered?.hazenWilliamsC !== undefined);
  return [
    "The relations are in the method document. “Same loss as C” is the Hazen–Williams C of the same friction loss, for readers who know walls by it; it is not constant on shells.",
    isAnyByC &&
      "Where the clean wall is known by its C, its roughness is the one of the same loss at this flow; fouled, it loses by Darcy–Weisbach and never less than clean.",
    (has("† ") || has("‡ ")) &&
      "† Roughness above a twentieth of the bore, the range in which Colebrook–White is in use: the loss is an extrapolation.",
    has("‡ ") && "‡ Roughness above half the bore counts as half: shells meet across the pipe.",
  ]
    .filter(Boolean)
    .join(" ");
}
