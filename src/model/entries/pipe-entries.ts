import type { Assumed } from "../assumed.js";
import { pipeArea } from "../hydraulics/friction.js";
import { cleanWaterway, waterwayFlow, waterwayLoss } from "../hydraulics/waterway.js";
import type { StructureBase } from "../structures/inputs.js";
import type { PipePart } from "../structures/pipe-part.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual, usuallyAtMost, within } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** Velocity in each clean pipe of a structure at its largest flow, and the roughness of its wall. */
export function pipeEntries(checked: Checked<StructureBase>, parts: readonly PipePart[]): EntryCheck[] {
  const { assumed } = checked;
  return parts.flatMap((part) => [
    usual(velocityEntry(checked, part), velocityRanges[part.size], assumed),
    ...roughnessCheck(checked, part),
    ...headRatioCheck(checked, part),
  ]);
}

const velocityRanges = {
  conduit: usualRanges.conduitVelocity,
  penstock: usualRanges.penstockVelocity,
  line: usualRanges.lineVelocity,
} as const;

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

const velocityEntry = (checked: Checked<StructureBase>, part: PipePart) =>
  entryOf(checked, [...part.at, "diameter"], {
    what: `${part.name}: velocity when clean, at the largest flow`,
    measure: "speed",
    found: cleanVelocity(part),
    remedy: "Look again at its diameter and its flow, and at their units.",
  });

function roughnessCheck(checked: Checked<StructureBase>, { name, at, pipe }: PipePart): EntryCheck[] {
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
function headRatioCheck(checked: Checked<StructureBase>, part: PipePart): EntryCheck[] {
  const { drive } = part;
  if (drive.by !== "head") return [];
  const entry = entryOf(checked, drive.at, {
    what: `${part.name}: head available over the head that it needs when clean`,
    measure: "count",
    found: drive.head / cleanLoss(part, checked.contexts[0].viscosity),
    remedy: "Look again at the head, the length, the diameter and the flow, and at their units.",
  });
  const check = usuallyAtMost(entry, usualRanges.headRatio, checked.assumed);
  return [drive.isDeliveryChecked ? check : within(entry, { ...check, low: 1 })];
}

/** Share of its largest flow that a head drives through a clean pipe. */
export function cleanDelivered({ pipe, flow }: PipePart, head: number, viscosity: number): number {
  const clean = cleanWaterway(pipe, { largestFlow: flow, viscosity });
  return Math.min(1, waterwayFlow(clean, head, viscosity) / flow);
}

/** Head lost in a clean pipe at its largest flow, m. */
export const cleanLoss = ({ pipe, flow }: Pick<PipePart, "pipe" | "flow">, viscosity: number): number =>
  waterwayLoss(cleanWaterway(pipe, { largestFlow: flow, viscosity }), flow, viscosity);
