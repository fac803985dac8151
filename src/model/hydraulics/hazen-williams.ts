import { gravity, type PipeFlow, pipeArea } from "./friction.js";

type Sized = Pick<PipeFlow, "length" | "diameter">;

const flowPower = 1.852;

/**
 * Hazen–Williams friction loss, m: h = 10.67 L Q^1.852 / (C^1.852 D^4.8704) (Williams and Hazen 1905, from memory;
 * variants differ by 0.1 %).
 * For clean pipes only: C is not constant on a wall of shells, where the loss grows with Q².
 */
export function hazenWilliamsLoss(pipe: Sized, flow: number, c: number): number {
  return resistance(pipe, c) * flow ** flowPower;
}

const resistance = ({ length, diameter }: Sized, c: number) =>
  (10.67 * length) / (c ** flowPower * diameter ** 4.8704);

/**
 * The C that gives the same friction loss, C = (h1/h)^(1/1.852), h1 the loss at a C of 1, for readers who know a wall
 * by its C (Williams and Hazen 1905).
 */
export function equivalentC(pipe: Sized, flow: number, frictionLoss: number): number {
  return (hazenWilliamsLoss(pipe, flow, 1) / frictionLoss) ** (1 / flowPower);
}

const lastRelativeChange = 1e-8;

/**
 * Flow that a head drives by Hazen–Williams with local losses ΣK V²/2g, m³/s. The loss is convex in the flow, so that
 * Newton's method falls on the root from the flow that either loss alone would let pass.
 */
export function hazenWilliamsFlow(
  pipe: Sized & Pick<PipeFlow, "minorLoss">,
  head: number,
  c: number,
): number {
  if (head <= 0) return 0;
  const friction = resistance(pipe, c);
  const local = pipe.minorLoss / (2 * gravity * pipeArea(pipe.diameter) ** 2);
  let flow = (head / friction) ** (1 / flowPower);
  if (local === 0) return flow;
  flow = Math.min(flow, Math.sqrt(head / local));
  let change = Infinity;
  while (change >= lastRelativeChange * flow) {
    const rubbed = friction * flow ** flowPower;
    const lost = local * flow * flow;
    change = ((rubbed + lost - head) * flow) / (flowPower * rubbed + 2 * lost);
    flow -= change;
  }
  return flow;
}

/**
 * Sand roughness that by Darcy–Weisbach and Colebrook–White loses the same friction head at this flow, m: with
 * x = 1/√f, e = 3.7 D (10^(−x/2) − 2.51 x/Re), Colebrook 1939 solved for the roughness. At least 0, where the wall is
 * smoother than a smooth pipe's.
 */
export function equivalentRoughness(
  pipe: Sized,
  c: number,
  flow: { readonly flow: number; readonly viscosity: number },
): number {
  if (flow.flow === 0) return 0;
  const { length, diameter } = pipe;
  const velocity = flow.flow / pipeArea(diameter);
  const velocityHead = velocity ** 2 / (2 * gravity);
  const factor = (hazenWilliamsLoss(pipe, flow.flow, c) * diameter) / (length * velocityHead);
  const inverseRoot = 1 / Math.sqrt(factor);
  const reynolds = (velocity * diameter) / flow.viscosity;
  return Math.max(0, 3.7 * diameter * (10 ** (-inverseRoot / 2) - (2.51 * inverseRoot) / reynolds));
}
