import { pipeArea } from "../hydraulics/friction.js";
import type { Layer } from "../mussels/layer.js";
import type { Component, Limit, LimitLoad } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Pipe } from "./inputs.js";
import { loadOf } from "./limits.js";

/** Assumptions behind the hydraulics of every fouled pipe. */
export const fouledPipeIds = [
  "hydraulics.open-cover",
  "hydraulics.closed-cover",
  "hydraulics.closed-roughness-ratio",
  "hydraulics.largest-roughness-ratio",
  "hydraulics.viscosity",
  "growth.bulk-density",
] as const;

/** The inner wall of a pipe as a surface to grow on, at the velocity of each month's flow. */
export function pipeWall(
  pipe: Pipe,
  elevation: number,
  flow: readonly number[],
): Pick<Component, "surface" | "wettedArea"> {
  return {
    surface: {
      place: { at: "elevation", elevation },
      velocity: flow.map((each) => each / pipeArea(pipe.diameter)),
    },
    wettedArea: Math.PI * pipe.diameter * pipe.length,
  };
}

/** A thick layer breaks off in clumps and reaches pumps, screens and valves. */
export function thicknessLimit({ assumed }: LakeContext): (layer: Layer) => LimitLoad {
  const largest = assumed(largestLayerId);
  return (layer) => loadOf(tooThick, layer.thickness, largest);
}

const largestLayerId = "conduit.largest-layer";
const tooThick: Limit = { broken: "layer thicker than the limit", assumptionIds: [largestLayerId] };
