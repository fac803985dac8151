import { pipeArea } from "../hydraulics/friction.js";
import type { Layer } from "../mussels/layer.js";
import type { Component, Limit, Meet } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Pipe } from "./inputs.js";
import type { UpstreamWall } from "./raw-water/fittings.js";

/** Assumptions behind the hydraulics of every fouled pipe. */
export const fouledPipeIds = [
  "hydraulics.open-cover",
  "hydraulics.closed-cover",
  "hydraulics.closed-roughness-ratio",
  "hydraulics.largest-roughness-ratio",
  "hydraulics.viscosity",
  "growth.bulk-density",
] as const;

/** What runs through a pipe by month: its flow, and the share of the month in which it does if not all. */
export interface PipeFlow {
  readonly flow: readonly number[];
  readonly share?: readonly number[];
}

/** The inner wall of a pipe as a surface to grow on, at the velocity of each month's flow while it runs. */
export function pipeWall(
  pipe: Pipe,
  elevation: number,
  { flow, share }: PipeFlow,
): Pick<Component, "surface" | "wettedArea"> {
  return {
    surface: {
      place: { at: "elevation", elevation },
      velocity: flow.map((each) => each / pipeArea(pipe.diameter)),
      running: share,
    },
    wettedArea: Math.PI * pipe.diameter * pipe.length,
  };
}

/** The same as a wall that lines are tapped from. @param count pipes alike */
export const upstreamWall = (
  { surface, wettedArea }: Pick<Component, "surface" | "wettedArea">,
  flow: readonly number[],
  count = 1,
): UpstreamWall => ({ surface, area: wettedArea * count, flow: Math.max(...flow) * count });

/** A thick layer breaks off in clumps and reaches pumps, screens and valves. */
export function thicknessLimit({ assumed }: LakeContext): (meet: Meet, layer: Layer) => void {
  const largest = assumed(largestLayerId);
  return (meet, layer) => meet(tooThick, layer.thickness, largest);
}

const largestLayerId = "conduit.largest-layer";
const tooThick: Limit = { broken: "layer thicker than the limit", assumptionIds: [largestLayerId] };
