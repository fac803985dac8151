import { sumOf } from "../lists.js";
import { betaOf } from "../risk/beta.js";
import { normalQuantile } from "../uncertainty/normal-quantile.js";

/** Step of every grid of logarithms here: values are told apart to 10 %. */
export const logStep = 1 / 10;

/** A positive quantity that is not known exactly: chances of e^(step × (first + i)) for i = 0, 1, …, which add up to 1. */
export interface LogDensity {
  readonly first: number;
  readonly chances: Float64Array;
}

/** A range that holds a quantity with a chance of 90 %: 5 % lie below `low` and 5 % above `high`. */
export interface Ninety {
  readonly low: number;
  readonly high: number;
}

export interface WeightedValue {
  readonly value: number;
  readonly weight: number;
}

/** Standard deviations from the median to the 95th percentile of a normal distribution. */
const toNinetyFifth = normalQuantile(19 / 20);

/** A quantity known exactly. */
export const exactly = (value: number): LogDensity => densityOf([{ value, weight: 1 }]);

/** Lognormal through its 5th and 95th percentiles. */
export const lognormalThrough = ({ low, high }: Ninety): LogDensity =>
  normalDensity((Math.log(low) + Math.log(high)) / 2, (Math.log(high) - Math.log(low)) / 2 / toNinetyFifth);

/** Standard deviations of a normal distribution that are kept, and the step between its points. */
const [widest, normalStep] = [5, 1 / 4];

/** A quantity whose logarithm is normal. */
export function normalDensity(mean: number, spread: number): LogDensity {
  const steps = Math.round(widest / normalStep);
  return densityOf(
    Array.from({ length: 2 * steps + 1 }, (_, step) => {
      const away = (step - steps) * normalStep;
      return { value: Math.exp(mean + away * spread), weight: Math.exp(-(away ** 2) / 2) };
    }),
  );
}

const logit = (share: number) => Math.log(share) - Math.log1p(-share);

/** Points on each side of the middle of a share, and how far out they lie in standard deviations. */
const [sharePoints, shareReach] = [6, 4];

/**
 * Shares with the weights of the beta distribution through the range, evenly spaced in their logits: there the density is
 * ∝ x^α (1 − x)^β.
 */
export function sharesThrough(range: Ninety, points: number = sharePoints): WeightedValue[] {
  const { alpha, beta } = betaThrough(range);
  const [low, high] = [logit(range.low), logit(range.high)];
  const middle = (low + high) / 2;
  const step = ((high - low) / 2 / toNinetyFifth) * (shareReach / points);
  const peak = alpha * Math.log(range.low) + beta * Math.log1p(-range.low);
  return Array.from({ length: 2 * points + 1 }, (_, point) => {
    const value = 1 / (1 + Math.exp(-(middle + (point - points) * step)));
    return { value, weight: Math.exp(alpha * Math.log(value) + beta * Math.log1p(-value) - peak) };
  });
}

const mostSteps = 60;
const closeEnough = 1e-9;
/** From here on a beta distribution is as good as normal, and its mean and variance give it. */
const narrow = 1e6;

export interface BetaParameters {
  readonly alpha: number;
  readonly beta: number;
}

/** Of a beta distribution, by the logit of its mean and the logarithm of α + β. */
function betaFrom(middle: number, size: number): BetaParameters {
  const weight = Math.exp(size);
  return { alpha: weight / (1 + Math.exp(-middle)), beta: weight / (1 + Math.exp(middle)) };
}

/** Beta distribution with 5 % below `low` and 5 % above `high`: Newton's method in its mean and its size. */
export function betaThrough({ low, high }: Ninety): BetaParameters {
  const mean = (low + high) / 2;
  const variance = ((high - low) / 2 / toNinetyFifth) ** 2;
  const weight = Math.min(largestWeight, Math.max(1, (mean * (1 - mean)) / variance - 1));
  let [middle, size] = [logit(mean), Math.log(weight)];
  const missAt = (m: number, s: number) => {
    const { alpha, beta } = betaFrom(m, s);
    const { chanceUpTo } = betaOf(alpha, beta);
    return [chanceUpTo(low) - 1 / 20, chanceUpTo(high) - 19 / 20] as const;
  };
  const widest = (logit(high) - logit(low)) / 4;
  for (let step = 0; weight < narrow && step < mostSteps; step++) {
    const miss = missAt(middle, size);
    if (Math.abs(miss[0]) + Math.abs(miss[1]) < closeEnough) break;
    const move = slopeStep * widest;
    const [m, s] = newtonStep(miss, missAt(middle + move, size), missAt(middle, size + slopeStep), [
      move,
      slopeStep,
    ]);
    middle += within(m, widest);
    size += within(s, 1);
  }
  return betaFrom(middle, size);
}

/** Of α + β, for a range that is hardly one. */
const largestWeight = 1e12;
const slopeStep = 1e-4;

const within = (change: number, most: number) => Math.max(-most, Math.min(most, change));

type Pair = readonly [number, number];

/** Change of two unknowns towards no miss, from the misses at a small change of the one and of the other. */
function newtonStep([f, g]: Pair, byOne: Pair, byOther: Pair, moves: Pair): Pair {
  const [a, c] = [(byOne[0] - f) / moves[0], (byOne[1] - g) / moves[0]];
  const [b, d] = [(byOther[0] - f) / moves[1], (byOther[1] - g) / moves[1]];
  const determinant = a * d - b * c;
  return determinant === 0 ? [0, 0] : [(b * g - d * f) / determinant, (c * f - a * g) / determinant];
}

/** Density of weighted values: each shared between the two grid points beside it. */
export function densityOf(values: readonly WeightedValue[]): LogDensity {
  const cells = Float64Array.from(values, ({ value }) => Math.log(value) / logStep);
  const total = sumOf(values.map(({ weight }) => weight));
  const first = Math.floor(cells.reduce((least, cell) => Math.min(least, cell)));
  const last = Math.floor(cells.reduce((most, cell) => Math.max(most, cell))) + 1;
  const chances = new Float64Array(last - first + 1);
  values.forEach(({ weight }, index) => {
    const cell = cells[index] ?? first;
    const below = Math.floor(cell);
    const upper = cell - below;
    chances[below - first] = (chances[below - first] ?? 0) + ((1 - upper) * weight) / total;
    chances[below - first + 1] = (chances[below - first + 1] ?? 0) + (upper * weight) / total;
  });
  return { first, chances };
}

/** The product of two independent quantities. */
export function times(one: LogDensity, other: LogDensity): LogDensity {
  const chances = new Float64Array(one.chances.length + other.chances.length - 1);
  for (let cell = 0; cell < one.chances.length; cell++) {
    const chance = one.chances[cell] ?? 0;
    for (let next = 0; next < other.chances.length; next++) {
      chances[cell + next] = (chances[cell + next] ?? 0) + chance * (other.chances[next] ?? 0);
    }
  }
  return { first: one.first + other.first, chances };
}

/** @throws RangeError where nothing has a chance */
export function normalised({ first, chances }: LogDensity): LogDensity {
  const sum = chances.reduce((total, chance) => total + chance, 0);
  if (!(sum > 0)) throw new RangeError("chances that are all 0; allowed: at least one above");
  return { first, chances: chances.map((chance) => chance / sum) };
}

/** Value that the quantity does not exceed with a chance. */
export function quantileOf({ first, chances }: LogDensity, chance: number): number {
  let below = 0;
  for (let cell = 0; cell < chances.length; cell++) {
    const here = chances[cell] ?? 0;
    if (below + here >= chance) {
      return Math.exp((first + cell - 1 / 2 + (chance - below) / here) * logStep);
    }
    below += here;
  }
  return Math.exp((first + chances.length - 1) * logStep);
}

/** Values not exceeded with chances of 10, 50 and 90 %. */
export interface Tenths {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

export const tenthsOf = (density: LogDensity): Tenths => ({
  p10: quantileOf(density, 1 / 10),
  p50: quantileOf(density, 1 / 2),
  p90: quantileOf(density, 9 / 10),
});
