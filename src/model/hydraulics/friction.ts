/** Standard gravity as used in the check tables, m/s². */
export const gravity = 9.81;
/** Density of fresh water, kg/m³. */
export const waterDensity = 1000;

export interface PipeFlow {
  readonly length: number;
  readonly diameter: number;
  /** Equivalent sand roughness, m. */
  readonly roughness: number;
  /** Sum of local loss coefficients on V²/2g. */
  readonly minorLoss: number;
}

const laminarLimit = 2000;
const turbulentLimit = 4000;
const tolerance = 1e-12;
const mostSteps = 100;
/** Beyond this ratio of roughness to bore the relation has no meaning: shells meet across the pipe. */
const largestRelativeRoughness = 1 / 2;

export const pipeArea = (diameter: number): number => (Math.PI * diameter ** 2) / 4;

/**
 * Darcy friction factor. Laminar below Re 2000: 64/Re. Turbulent above 4000: Colebrook–White,
 * 1/√f = −2 log₁₀[(e/D)/3.7 + 2.51/(Re √f)], solved by fixed point to 1e-12 in 1/√f.
 * Between the two, linear in Re, since no published relation holds there.
 * Source: Colebrook 1939 (from memory).
 */
export function frictionFactor(reynolds: number, roughnessOverBore: number): number {
  if (reynolds <= laminarLimit) return 64 / reynolds;
  const relativeRoughness = Math.min(roughnessOverBore, largestRelativeRoughness);
  if (reynolds >= turbulentLimit) return colebrook(reynolds, relativeRoughness);
  const share = (reynolds - laminarLimit) / (turbulentLimit - laminarLimit);
  return (1 - share) * (64 / laminarLimit) + share * colebrook(turbulentLimit, relativeRoughness);
}

/** Right side of the Colebrook–White equation: 1/√f from e/D and from 1/(Re √f). */
function colebrookInverseRoot(relativeRoughness: number, inverseRootByReynolds: number): number {
  return -2 * Math.log10(relativeRoughness / 3.7 + 2.51 * inverseRootByReynolds);
}

function colebrook(reynolds: number, relativeRoughness: number): number {
  let inverseRoot = 1 / Math.sqrt(swameeJain(reynolds, relativeRoughness));
  for (let step = 0; step < mostSteps; step++) {
    const next = colebrookInverseRoot(relativeRoughness, inverseRoot / reynolds);
    const change = Math.abs(next - inverseRoot);
    inverseRoot = next;
    if (change < tolerance) break;
  }
  return inverseRoot ** -2;
}

/** Explicit friction factor of Swamee and Jain 1976 (from memory): the start of the iteration, and a check. */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/**
 * Head lost in a full round pipe, m: Darcy–Weisbach friction plus local losses,
 * h = (f L/D + ΣK) V²/2g. A closed bore loses an infinite head.
 * @param viscosity kinematic, m²/s
 */
export function pipeHeadLoss(pipe: PipeFlow, flow: number, viscosity: number): number {
  if (flow === 0) return 0;
  if (pipe.diameter <= 0) return Infinity;
  const velocity = flow / pipeArea(pipe.diameter);
  const reynolds = (velocity * pipe.diameter) / viscosity;
  const factor = frictionFactor(reynolds, pipe.roughness / pipe.diameter);
  return ((factor * pipe.length) / pipe.diameter + pipe.minorLoss) * (velocity ** 2 / (2 * gravity));
}

const relativeRoughnessOf = ({ roughness, diameter }: PipeFlow) =>
  Math.min(roughness / diameter, largestRelativeRoughness);

/**
 * Flow that a head drives through a pipe, m³/s: Darcy–Weisbach and Colebrook–White solved together by fixed
 * point, V = √(2gh/(f L/D + ΣK)); without local losses by the closed form of `frictionOnlyFlow`.
 * Below Re 4000 the flow is found by bisection on the head loss, which rises with the flow.
 */
export function flowAtHead(pipe: PipeFlow, head: number, viscosity: number): number {
  if (head <= 0 || pipe.diameter <= 0) return 0;
  const { length, diameter, minorLoss } = pipe;
  const relativeRoughness = relativeRoughnessOf(pipe);
  if (minorLoss === 0) return turbulentOrSlow(frictionOnlyFlow(pipe, head, viscosity), pipe, head, viscosity);
  let inverseRoot = 1 / Math.sqrt(swameeJain(turbulentLimit, relativeRoughness));
  let velocity = 0;
  for (let step = 0; step < mostSteps; step++) {
    velocity = Math.sqrt((2 * gravity * head) / (length / (diameter * inverseRoot ** 2) + minorLoss));
    const reynolds = (velocity * diameter) / viscosity;
    const next = colebrookInverseRoot(relativeRoughness, inverseRoot / reynolds);
    const change = Math.abs(next - inverseRoot);
    inverseRoot = next;
    if (change < tolerance) break;
  }
  return turbulentOrSlow(velocity * pipeArea(diameter), pipe, head, viscosity);
}

function turbulentOrSlow(flow: number, pipe: PipeFlow, head: number, viscosity: number): number {
  const reynolds = (flow / pipeArea(pipe.diameter)) * (pipe.diameter / viscosity);
  return reynolds >= turbulentLimit ? flow : slowFlowAtHead(pipe, head, viscosity);
}

function slowFlowAtHead(pipe: PipeFlow, head: number, viscosity: number): number {
  let low = 0;
  let high = (turbulentLimit * viscosity * pipeArea(pipe.diameter)) / pipe.diameter;
  for (let step = 0; step < mostSteps; step++) {
    const middle = (low + high) / 2;
    if (pipeHeadLoss(pipe, middle, viscosity) > head) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** The closed form of `flowAtHead` for friction alone in turbulent flow. */
export function frictionOnlyFlow(pipe: PipeFlow, head: number, viscosity: number): number {
  const { diameter, length } = pipe;
  const speed = Math.sqrt((2 * gravity * diameter * head) / length);
  return (
    pipeArea(diameter) *
    speed *
    colebrookInverseRoot(relativeRoughnessOf(pipe), viscosity / (diameter * speed))
  );
}

/**
 * Hazen–Williams head loss, m: h = 10.67 L Q^1.852 / (C^1.852 D^4.8704) (from memory; variants differ by 0.1 %).
 * For clean pipes only: C is not constant on a wall of shells.
 */
export function hazenWilliamsLoss(
  pipe: { length: number; diameter: number },
  flow: number,
  c: number,
): number {
  return (10.67 * pipe.length * flow ** 1.852) / (c ** 1.852 * pipe.diameter ** 4.8704);
}

/** The C that gives the same loss as `headLoss`, for readers who know a wall by its C. */
export function equivalentC(
  pipe: { length: number; diameter: number },
  flow: number,
  headLoss: number,
): number {
  return (hazenWilliamsLoss(pipe, flow, 1) / headLoss) ** (1 / 1.852);
}
