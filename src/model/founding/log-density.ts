import { sumOf } from "../../lists.js";
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
export const toNinetyFifth = normalQuantile(19 / 20);

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
