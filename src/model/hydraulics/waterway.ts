import type { Pipe } from "../structures/inputs.js";
import { flowAtHead, gravity, type PipeFlow, pipeArea, pipeHeadLoss } from "./friction.js";
import { equivalentRoughness, hazenWilliamsFlow, hazenWilliamsLoss } from "./hazen-williams.js";

/** A pipe as it stands, clean or fouled, with the law that gives its loss. */
export interface Waterway extends PipeFlow {
  /** Set where a clean wall is known by its Hazen–Williams C; its `roughness` is then the equivalent one. */
  readonly hazenWilliamsC?: number;
  /** Set on a fouled pipe whose clean state follows another law, and which never loses less than that. */
  readonly clean?: Waterway;
}

/**
 * The clean pipe of a study. Where it is given by C, the equivalent sand roughness is that at the largest flow.
 * @param water.largestFlow m³/s
 * @param water.viscosity kinematic, m²/s
 */
export function cleanWaterway(pipe: Pipe, water: { largestFlow: number; viscosity: number }): Waterway {
  const { length, diameter, minorLoss, hazenWilliamsC } = pipe;
  if (hazenWilliamsC === undefined) return { length, diameter, minorLoss, roughness: pipe.roughness ?? 0 };
  const { viscosity, largestFlow } = water;
  const roughness = equivalentRoughness(pipe, hazenWilliamsC, { flow: largestFlow, viscosity });
  return { length, diameter, minorLoss, roughness, hazenWilliamsC };
}

/** Head lost, m: by Hazen–Williams in a clean pipe known by its C, else by Darcy–Weisbach; local losses in both. */
export function waterwayLoss(waterway: Waterway, flow: number, viscosity: number): number {
  const { clean, hazenWilliamsC: c } = waterway;
  if (c !== undefined) {
    const velocity = flow / pipeArea(waterway.diameter);
    return hazenWilliamsLoss(waterway, flow, c) + (waterway.minorLoss * velocity ** 2) / (2 * gravity);
  }
  const loss = pipeHeadLoss(waterway, flow, viscosity);
  return clean ? Math.max(loss, waterwayLoss(clean, flow, viscosity)) : loss;
}

/** Flow that a head drives, m³/s: the inverse of `waterwayLoss`. */
export function waterwayFlow(waterway: Waterway, head: number, viscosity: number): number {
  const { clean, hazenWilliamsC: c } = waterway;
  if (c !== undefined) return hazenWilliamsFlow(waterway, head, c);
  const flow = flowAtHead(waterway, head, viscosity);
  return clean ? Math.min(flow, waterwayFlow(clean, head, viscosity)) : flow;
}
