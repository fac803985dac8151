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

export type Regime = "laminar" | "transitional" | "turbulent";

const laminarLimit = 2000;
const turbulentLimit = 4000;
const laminarConstant = 64;
/**
 * Newton steps end after a change of this much in 1/√f. The next error is below 0.05 times its square, so that
 * the root is then exact to 1e-12.
 */
const lastChange = 1e-6;
const mostSteps = 20;
/** Beyond this ratio of roughness to bore the relation has no meaning: shells meet across the pipe. */
const largestRelativeRoughness = 1 / 2;

export const pipeArea = (diameter: number): number => (Math.PI * diameter ** 2) / 4;

/** Laminar up to Re 2000, turbulent from 4000 (from memory; EPANET blends over the same range). */
export function regimeOf(reynolds: number): Regime {
  if (reynolds <= laminarLimit) return "laminar";
  return reynolds >= turbulentLimit ? "turbulent" : "transitional";
}

/**
 * Darcy friction factor at a Reynolds number Re = V D/ν. Laminar below Re 2000: 64/Re. Turbulent above 4000:
 * Colebrook–White, 1/√f = −2 log₁₀[(e/D)/3.7 + 2.51/(Re √f)], to 1e-12 in 1/√f.
 * Between the two, linear in Re, since no published relation holds there:
 * f = f2 + (f4 − f2)·(Re − 2000)/(4000 − 2000).
 * e/D counts at most as 1/2. Source: Colebrook 1939 (from memory).
 */
export function frictionFactor(reynolds: number, roughnessOverBore: number): number {
  if (reynolds <= laminarLimit) return laminarConstant / reynolds;
  const relativeRoughness = Math.min(roughnessOverBore, largestRelativeRoughness);
  if (reynolds >= turbulentLimit) return colebrook(reynolds, relativeRoughness);
  const share = (reynolds - laminarLimit) / (turbulentLimit - laminarLimit);
  const laminarEnd = laminarConstant / laminarLimit;
  return (1 - share) * laminarEnd + share * colebrook(turbulentLimit, relativeRoughness);
}

/** −2 log₁₀ of the argument: the right side of the Colebrook–White equation. */
const inverseRootOf = (argument: number) => (-2 / Math.LN10) * Math.log(argument);

/** 1/√f of a factor of 0.02: on the right side, which it hardly moves, it gives a value to start from. */
const usualInverseRoot = 7;

/** Newton's method on F(x) = x + 2 log₁₀(a + b x) with x = 1/√f: it rises and is concave, so that no step goes astray. */
function colebrook(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  const viscous = 2.51 / reynolds;
  let inverseRoot = inverseRootOf(rough + viscous * usualInverseRoot);
  let change = Infinity;
  while (Math.abs(change) >= lastChange) {
    const argument = rough + viscous * inverseRoot;
    const residual = inverseRoot - inverseRootOf(argument);
    change = residual / (1 + ((2 / Math.LN10) * viscous) / argument);
    inverseRoot -= change;
  }
  return 1 / (inverseRoot * inverseRoot);
}

/**
 * Head lost in a full round pipe, m: Darcy–Weisbach friction (Weisbach 1845, from memory) plus local losses,
 * h = (f L/D + ΣK) V²/2g. A closed bore loses an infinite head.
 * @param viscosity kinematic, m²/s
 */
export function pipeHeadLoss(pipe: PipeFlow, flow: number, viscosity: number): number {
  if (flow === 0) return 0;
  const { length, diameter, roughness, minorLoss } = pipe;
  if (diameter <= 0) return Infinity;
  const velocity = flow / pipeArea(diameter);
  const factor = frictionFactor((velocity * diameter) / viscosity, roughness / diameter);
  return ((factor * length) / diameter + minorLoss) * ((velocity * velocity) / (2 * gravity));
}

/**
 * Flow that a head drives through a pipe, m³/s: the inverse of `pipeHeadLoss` (Darcy–Weisbach, `darcy-weisbach`).
 * Turbulent: with x = 1/√f, V = x √(2gh)/s and s = √(L/D + ΣK x²), Colebrook–White becomes x = −2 log₁₀[(e/D)/3.7 + 2.51 ν s/(D √(2gh))],
 * solved by Newton's method from its closed form without local losses.
 */
export function flowAtHead(pipe: PipeFlow, head: number, viscosity: number): number {
  const { length, diameter, minorLoss } = pipe;
  if (head <= 0 || diameter <= 0) return 0;
  const relativeRoughness = Math.min(pipe.roughness / diameter, largestRelativeRoughness);
  const rough = relativeRoughness / 3.7;
  const freeVelocity = Math.sqrt(2 * gravity * head);
  const viscous = (2.51 * viscosity) / (diameter * freeVelocity);
  const slenderness = length / diameter;
  let inverseRoot = inverseRootOf(rough + viscous * Math.sqrt(slenderness));
  for (let step = 0; minorLoss > 0 && inverseRoot > 0 && step < mostSteps; step++) {
    const spread = Math.sqrt(slenderness + minorLoss * inverseRoot * inverseRoot);
    const argument = rough + viscous * spread;
    const slope = 1 + ((2 / Math.LN10) * viscous * minorLoss * inverseRoot) / (spread * argument);
    const change = (inverseRoot - inverseRootOf(argument)) / slope;
    inverseRoot -= change;
    if (Math.abs(change) < lastChange) break;
  }
  const spread = Math.sqrt(slenderness + minorLoss * inverseRoot * inverseRoot);
  const velocity = (inverseRoot * freeVelocity) / spread;
  const isTurbulent = (velocity * diameter) / viscosity >= turbulentLimit;
  return (
    pipeArea(diameter) * (isTurbulent ? velocity : slowVelocity(pipe, relativeRoughness, head, viscosity))
  );
}

/**
 * Velocity below Re 4000. With p = L/D and u = (ν/D)²/2g: laminar, h = u (64 p Re + ΣK Re²), a quadratic;
 * transitional, f = f₀ + m (Re − 2000) makes it h = u [(p (f₀ − 2000 m) + ΣK) Re² + p m Re³], which rises and is
 * convex up to Re 4000, so that Newton's method from there falls on the root.
 */
function slowVelocity(pipe: PipeFlow, relativeRoughness: number, head: number, viscosity: number): number {
  const { length, diameter, minorLoss } = pipe;
  const slenderness = length / diameter;
  const scaledHead = (head * 2 * gravity * diameter ** 2) / viscosity ** 2;
  const half = (laminarConstant * slenderness) / 2;
  const laminar = scaledHead / (half + Math.sqrt(half ** 2 + minorLoss * scaledHead));
  if (laminar <= laminarLimit) return (laminar * viscosity) / diameter;
  const start = laminarConstant / laminarLimit;
  const rise = (colebrook(turbulentLimit, relativeRoughness) - start) / (turbulentLimit - laminarLimit);
  const square = slenderness * (start - rise * laminarLimit) + minorLoss;
  const cube = slenderness * rise;
  let reynolds = turbulentLimit;
  let change = Infinity;
  while (Math.abs(change) >= lastChange * reynolds) {
    change =
      (reynolds * reynolds * (square + cube * reynolds) - scaledHead) /
      (reynolds * (2 * square + 3 * cube * reynolds));
    reynolds -= change;
  }
  return (reynolds * viscosity) / diameter;
}
