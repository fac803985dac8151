import { at, sumOf } from "../../lists.js";
import { logGamma } from "../risk/beta.js";
import type { RatePrior, WeightedCount } from "./evidence.js";
import { type LogDensity, logStep, normalised } from "./log-density.js";
import { kernelOf, smooth } from "./smoothing.js";

/** What a region tells: foundings seen, and what they came from. */
export interface RegionCounts {
  readonly foundings: readonly WeightedCount[];
  /** E: fouled launches that reached the water, or lake-years. */
  readonly exposure: LogDensity;
}

export interface RatePosterior {
  /** Rate of a region not among those counted. */
  readonly newRegion: LogDensity;
  /** Median over regions. */
  readonly typical: LogDensity;
  /** Standard deviation of the logarithm of the rate between regions: the chance of each step of `spreadSteps`. */
  readonly between: readonly number[];
}

/** Rates from 1e-8 to 1. */
const lowest = Math.round(Math.log(1e-8) / logStep);
const cells = -lowest + 1;

/** A step of the spread between regions: from one value to another, and the middle that stands for it. */
export interface SpreadStep {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
}

const steps = 15;
/** Ends of the steps: narrow ones first, up to a spread of 3. */
const endOf = (step: number) => (step / 10) * (1 + (step / steps) ** 2);

export const spreadSteps: readonly SpreadStep[] = Array.from({ length: steps }, (_, step) => {
  const [from, to] = [endOf(step), endOf(step + 1)];
  return { from, to, middle: (from + to) / 2 };
});

/** Chance of what a region saw at each rate of the grid: Poisson counts with mean rate × exposure. */
export function likelihood({ foundings, exposure }: RegionCounts): Float64Array {
  const seen = foundings.map(({ count, weight }) => ({ count, weight, logFactorial: logGamma(count + 1) }));
  const ofMean = (logMean: number) => {
    const mean = Math.exp(logMean);
    return seen.reduce(
      (sum, { count, weight, logFactorial }) =>
        sum + weight * Math.exp(count * logMean - mean - logFactorial),
      0,
    );
  };
  const span = cells + exposure.chances.length;
  const means = Float64Array.from({ length: span }, (_, cell) =>
    ofMean((lowest + exposure.first + cell) * logStep),
  );
  return Float64Array.from({ length: cells }, (_, rate) => {
    let chance = 0;
    for (let cell = 0; cell < exposure.chances.length; cell++) {
      chance += (exposure.chances[cell] ?? 0) * (means[rate + cell] ?? 0);
    }
    return chance;
  });
}

/** What a region tells of the typical rate, for each spread between regions. */
export type Telling = readonly Float64Array[];

/** Worked out once for a region, whichever others it is held together with. */
export function tellingOf(region: RegionCounts): Telling {
  let chances = likelihood(region);
  return kernels.map((kernel) => {
    chances = smooth(chances, kernel);
    return chances;
  });
}

/** The prior of the typical rate, by its cells. */
const priorOf = ({ median, spread }: RatePrior) =>
  Float64Array.from({ length: cells }, (_, cell) => {
    const away = ((lowest + cell) * logStep - Math.log(median)) / spread;
    return Math.exp(-(away ** 2) / 2);
  });

/**
 * Rates that differ between regions: y ~ Poisson(α E) in each, ln α ~ N(μ, τ²) over regions, μ normal and τ half-normal
 * before the counts. Worked out by sums over grids of ln α, μ and τ; no sampling.
 */
export function ratesOf(tellings: readonly Telling[], prior: RatePrior): RatePosterior {
  const before = priorOf(prior);
  const typical = new Float64Array(cells);
  const between: number[] = [];
  let newRegion: Float64Array = new Float64Array(cells);
  // From the widest spread down, so that each smoothing adds to those before it.
  for (let step = steps - 1; step >= 0; step--) {
    const chances = atSpread(step, tellings, before, prior);
    addTo(typical, chances);
    addTo(newRegion, chances);
    between.unshift(chances.reduce((sum, chance) => sum + chance));
    newRegion = smooth(newRegion, at(kernels, step));
  }
  const all = sumOf(between);
  return {
    newRegion: normalised({ first: lowest, chances: newRegion }),
    typical: normalised({ first: lowest, chances: typical }),
    between: between.map((chance) => chance / all),
  };
}

/** Chances of the typical rate together with a spread between regions. */
function atSpread(
  step: number,
  tellings: readonly Telling[],
  before: Float64Array,
  { betweenRegions }: RatePrior,
): Float64Array {
  const { from, to, middle } = at(spreadSteps, step);
  // Over the chance of the narrowest step, so that no prior makes all of them too small to be told from 0.
  const least = at(spreadSteps, 0).middle;
  const ofSpread = (to - from) * Math.exp((least ** 2 - middle ** 2) / betweenRegions ** 2 / 2);
  const chances = before.map((chance) => chance * ofSpread);
  for (const telling of tellings) multiply(chances, at(telling, step));
  return chances;
}

function addTo(sums: Float64Array, chances: Float64Array): void {
  for (let cell = 0; cell < sums.length; cell++) sums[cell] = (sums[cell] ?? 0) + (chances[cell] ?? 0);
}

function multiply(products: Float64Array, chances: Float64Array): void {
  for (let cell = 0; cell < products.length; cell++) {
    products[cell] = (products[cell] ?? 0) * (chances[cell] ?? 0);
  }
}

/** The rate that all these regions share, each with the same. */
export function commonRate(regions: readonly RegionCounts[], prior: RatePrior): LogDensity {
  const chances = priorOf(prior);
  for (const region of regions) multiply(chances, likelihood(region));
  return normalised({ first: lowest, chances });
}

/** What each step of the spread adds to the one before: normal deviations whose variances add up. */
const kernels = spreadSteps.map(({ middle }, step) =>
  kernelOf(Math.sqrt(middle ** 2 - (spreadSteps[step - 1]?.middle ?? 0) ** 2)),
);
