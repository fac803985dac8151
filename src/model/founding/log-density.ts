import { betaOf } from "../risk/beta.js";
import { normalQuantile } from "../uncertainty/normal-quantile.js";

/** Step of every grid of logarithms here: values are told apart to 10 %. */
export const logStep = 0.1;

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

/** Standard deviations from the median to the 95th percentile of a normal distribution. */
const toNinetyFifth = normalQuantile(0.95);

/** A quantity known exactly. */
export const exactly = (value: number): LogDensity => densityOf([value]);

/** Lognormal through its 5th and 95th percentiles. */
export function lognormalThrough({ low, high }: Ninety): LogDensity {
  if (low === high) return exactly(low);
  const middle = (Math.log(low) + Math.log(high)) / 2;
  const spread = (Math.log(high) - Math.log(low)) / 2 / toNinetyFifth;
  return normalDensity(middle, spread);
}

/** Widest part of a normal distribution that is kept, in standard deviations: less than 1e-6 lies beyond. */
const widest = 5;

/** A quantity whose logarithm is normal. */
export function normalDensity(mean: number, spread: number): LogDensity {
  const first = Math.floor((mean - widest * spread) / logStep);
  const last = Math.ceil((mean + widest * spread) / logStep);
  const chances = Float64Array.from({ length: last - first + 1 }, (_, cell) =>
    Math.exp(-((((first + cell) * logStep - mean) / spread) ** 2) / 2),
  );
  return normalised({ first, chances });
}

/** Shares of a beta distribution through its 5th and 95th percentiles, in equal parts of chance. */
const partsOfShare = 20;

/** Middles of equal parts of the beta distribution through its 5th and 95th percentiles. */
export function sharesThrough(range: Ninety, parts: number = partsOfShare): number[] {
  if (range.low === range.high) return [range.low];
  const { alpha, beta } = betaThrough(range);
  const { chanceUpTo } = betaOf(alpha, beta);
  const shares: number[] = [];
  const cells = 200;
  let before = 0;
  for (let cell = 1; cell <= cells && shares.length < parts; cell++) {
    const here = chanceUpTo(cell / cells);
    while (shares.length < parts && here >= (shares.length + 1 / 2) / parts) {
      const wanted = (shares.length + 1 / 2) / parts;
      shares.push((cell - 1 + (wanted - before) / (here - before)) / cells);
    }
    before = here;
  }
  return shares;
}

const mostSteps = 60;
const closeEnough = 1e-6;

/** Beta distribution with 5 % below `low` and 5 % above `high`: Newton's method in ln α and ln β. */
export function betaThrough({ low, high }: Ninety): { alpha: number; beta: number } {
  const mean = (low + high) / 2;
  const variance = ((high - low) / 2 / toNinetyFifth) ** 2;
  const weight = Math.max(0.5, (mean * (1 - mean)) / variance - 1);
  let [x, y] = [Math.log(mean * weight), Math.log((1 - mean) * weight)];
  const missAt = (a: number, b: number) => {
    const { chanceUpTo } = betaOf(Math.exp(a), Math.exp(b));
    return [chanceUpTo(low) - 0.05, chanceUpTo(high) - 0.95] as const;
  };
  for (let step = 0; step < mostSteps; step++) {
    const [f, g] = missAt(x, y);
    if (Math.abs(f) + Math.abs(g) < closeEnough) break;
    const move = 1e-4;
    const [fx, gx] = missAt(x + move, y);
    const [fy, gy] = missAt(x, y + move);
    const [a, b, c, d] = [(fx - f) / move, (fy - f) / move, (gx - g) / move, (gy - g) / move];
    const determinant = a * d - b * c;
    const bounded = (size: number) => Math.max(-1, Math.min(1, size));
    x -= bounded((d * f - b * g) / determinant);
    y -= bounded((a * g - c * f) / determinant);
  }
  return { alpha: Math.exp(x), beta: Math.exp(y) };
}

/** Density of values of equal chance. */
export function densityOf(values: readonly number[]): LogDensity {
  const cells = values.map((value) => Math.log(value) / logStep);
  const first = Math.floor(Math.min(...cells));
  const chances = new Float64Array(Math.ceil(Math.max(...cells)) - first + 2);
  for (const cell of cells) {
    const below = Math.floor(cell);
    const upper = cell - below;
    chances[below - first] = (chances[below - first] ?? 0) + (1 - upper) / cells.length;
    chances[below - first + 1] = (chances[below - first + 1] ?? 0) + upper / cells.length;
  }
  return { first, chances };
}

/** The product of two independent quantities. */
export function times(one: LogDensity, other: LogDensity): LogDensity {
  const chances = new Float64Array(one.chances.length + other.chances.length - 1);
  one.chances.forEach((chance, cell) => {
    other.chances.forEach((beside, next) => {
      chances[cell + next] = (chances[cell + next] ?? 0) + chance * beside;
    });
  });
  return { first: one.first + other.first, chances };
}

export function normalised({ first, chances }: LogDensity): LogDensity {
  const sum = chances.reduce((total, chance) => total + chance, 0);
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
