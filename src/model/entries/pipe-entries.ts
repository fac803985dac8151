import type { Assumed } from "../assumed.js";
import { pipeArea } from "../hydraulics/friction.js";
import { cleanWaterway, waterwayFlow, waterwayLoss } from "../hydraulics/waterway.js";
import { type PipePart, pipesOf } from "../structures/hydraulic-summary.js";
import type { Structure } from "../structures/inputs.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual, usuallyAtMost, within } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** Velocity in each clean pipe of a structure at its largest flow, and the roughness of its wall. */
export function pipeEntries(checked: Checked<Structure>): EntryCheck[] {
  const { assumed } = checked;
  return pipesOf(checked.structure)
    .filter(({ flow }) => flow > 0)
    .flatMap((part) => [
      usual(velocityEntry(checked, part), velocityRanges[sizeOf(part)], assumed),
      ...roughnessCheck(checked, part),
      ...headRatioCheck(checked, part),
    ]);
}

const velocityRanges = {
  conduit: usualRanges.conduitVelocity,
  penstock: usualRanges.penstockVelocity,
  line: usualRanges.lineVelocity,
} as const;

/** Lines of small bore are run otherwise than conduits and penstocks. */
const sizeOf = ({ name }: PipePart) => (name === "conduit" || name === "penstock" ? name : "line");

/** Velocity, pumped head and share of the flow delivered past which no clean pipe is kept in service. */
export const impossible = (
  assumed: Assumed,
): Readonly<Record<"velocity" | "pumpedHead" | "delivered", number>> => ({
  velocity: assumed("checks.impossible-velocity"),
  pumpedHead: assumed("checks.impossible-head"),
  delivered: assumed("checks.impossible-delivered"),
});

/** V = Q/A, clean. */
export const cleanVelocity = ({ pipe, flow }: PipePart): number => flow / pipeArea(pipe.diameter);

const velocityEntry = (checked: Checked<Structure>, part: PipePart) =>
  entryOf(checked, [...part.at, "diameter"], {
    what: `${part.name}: velocity when clean, at the largest flow`,
    measure: "speed",
    found: cleanVelocity(part),
    remedy: "Look again at its diameter and its flow, and at their units.",
  });

function roughnessCheck(checked: Checked<Structure>, { name, at, pipe }: PipePart): EntryCheck[] {
  if (pipe.roughness === undefined) return [];
  const entry = entryOf(checked, [...at, "roughness"], {
    what: `${name}: roughness of the clean wall`,
    measure: "smallLength",
    found: pipe.roughness,
    remedy: "Look again at the roughness and its unit.",
  });
  return [usual(entry, usualRanges.roughness, checked.assumed)];
}

/** Head that there is over the head that the clean pipe needs at the largest flow. */
function headRatioCheck(checked: Checked<Structure>, part: PipePart): EntryCheck[] {
  const given = availableHead(checked.structure, part);
  if (!given) return [];
  const entry = entryOf(checked, given.at, {
    what: `${part.name}: head available over the head that it needs when clean`,
    measure: "count",
    found: given.head / cleanLoss(part, checked.contexts[0].viscosity),
    remedy: "Look again at the head, the length, the diameter and the flow, and at their units.",
  });
  const check = usuallyAtMost(entry, usualRanges.headRatio, checked.assumed);
  return [checked.structure.kind === "intake" ? check : within(entry, { ...check, low: 1 })];
}

/** The head that is entered for a pipe, with its place; undefined where it follows from levels or a pump. */
export function availableHead(structure: Structure, { name, at, pipe }: PipePart) {
  if (structure.kind === "intake" && name === "conduit" && structure.supply.by === "gravity") {
    const { availableHead: head } = structure.supply;
    return head === undefined ? undefined : { head, at: ["supply", "availableHead"] };
  }
  return "availableHead" in pipe && typeof pipe.availableHead === "number"
    ? { head: pipe.availableHead, at: [...at, "availableHead"] }
    : undefined;
}

/** Share of its largest flow that a head drives through a clean pipe. */
export function cleanDelivered({ pipe, flow }: PipePart, head: number, viscosity: number): number {
  const clean = cleanWaterway(pipe, { largestFlow: flow, viscosity });
  return Math.min(1, waterwayFlow(clean, head, viscosity) / flow);
}

/** Head lost in a clean pipe at its largest flow, m. */
export const cleanLoss = ({ pipe, flow }: PipePart, viscosity: number): number =>
  waterwayLoss(cleanWaterway(pipe, { largestFlow: flow, viscosity }), flow, viscosity);
