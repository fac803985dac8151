import { sumOf } from "../lists.js";
import { logGamma } from "../risk/beta.js";
import { type LogDensity, logStep, normalised } from "./log-density.js";

/** What a region tells: foundings seen, each count with its weight, and what they came from. */
export interface RegionCounts {
  /** Weights add up to 1: more than one count where another route may explain a founding. */
  readonly foundings: ReadonlyArray<{ readonly count: number; readonly weight: number }>;
  /** E: fouled launches that reached the water, or lake-years. */
  readonly exposure: LogDensity;
}

/** Before the counts: the logarithm of the typical rate is normal, and the spread between regions half-normal. */
export interface RatePrior {
  readonly median: number;
  readonly spread: number;
  /** Standard deviation of the half-normal of the spread between regions. */
  readonly betweenRegions: number;
}

export interface RatePosterior {
  /** Rate of a region not among those counted. */
  readonly newRegion: LogDensity;
  /** Median over regions. */
  readonly typical: LogDensity;
  /** Standard deviation of the logarithm of the rate between regions: its chances, in steps of `betweenStep`. */
  readonly between: readonly number[];
}

/** Rates from 1e-8 to 1. */
const lowest = Math.round(Math.log(1e-8) / logStep);
const cells = -lowest + 1;
export const betweenStep = 0.1;
const betweenSteps = 30;

/** Chance of what a region saw at each rate of the grid: Poisson counts with mean rate × exposure. */
export function likelihood({ foundings, exposure }: RegionCounts): Float64Array {
  const ofMean = (mean: number) =>
    foundings.reduce(
      (sum, { count, weight }) =>
        sum + weight * Math.exp(count * Math.log(mean) - mean - logGamma(count + 1)),
      0,
    );
  const span = cells + exposure.chances.length;
  const means = Float64Array.from({ length: span }, (_, cell) =>
    ofMean(Math.exp((lowest + exposure.first + cell) * logStep)),
  );
  return Float64Array.from({ length: cells }, (_, rate) => {
    let chance = 0;
    for (let cell = 0; cell < exposure.chances.length; cell++) {
      chance += (exposure.chances[cell] ?? 0) * (means[rate + cell] ?? 0);
    }
    return chance;
  });
}

/**
 * Rates that differ between regions: y ~ Poisson(α E) in each, ln α ~ N(μ, τ²) over regions, μ normal and τ half-normal
 * before the counts. Worked out by sums over grids of ln α, μ and τ; no sampling.
 */
export function ratesOf(regions: readonly RegionCounts[], prior: RatePrior): RatePosterior {
  const seen = regions.map(likelihood);
  const centre = Math.log(prior.median);
  const typical = new Float64Array(cells);
  const newRegion = new Float64Array(cells);
  const between: number[] = [];
  for (let step = 0; step < betweenSteps; step++) {
    const spread = (step + 1 / 2) * betweenStep;
    const kernel = kernelOf(spread);
    const smoothed = seen.map((chances) => smooth(chances, kernel));
    const weights = Float64Array.from({ length: cells }, (_, cell) => {
      const away = ((lowest + cell) * logStep - centre) / prior.spread;
      const before = Math.exp(-(away ** 2) / 2 - (spread / prior.betweenRegions) ** 2 / 2);
      return smoothed.reduce((product, chances) => product * (chances[cell] ?? 0), before);
    });
    between.push(sumOf([...weights]));
    smooth(weights, kernel).forEach((chance, cell) => {
      newRegion[cell] = (newRegion[cell] ?? 0) + chance;
      typical[cell] = (typical[cell] ?? 0) + (weights[cell] ?? 0);
    });
  }
  const all = sumOf(between);
  return {
    newRegion: normalised({ first: lowest, chances: newRegion }),
    typical: normalised({ first: lowest, chances: typical }),
    between: between.map((chance) => chance / all),
  };
}

/** Chances of a normal deviation of 0, 1, … steps. */
function kernelOf(spread: number): Float64Array {
  const reach = Math.ceil((4 * spread) / logStep);
  const half = Float64Array.from({ length: reach + 1 }, (_, away) =>
    Math.exp(-(((away * logStep) / spread) ** 2) / 2),
  );
  const sum = half.reduce((total, chance) => total + 2 * chance, -1);
  return half.map((chance) => chance / sum);
}

function smooth(chances: Float64Array, kernel: Float64Array): Float64Array {
  const result = new Float64Array(chances.length);
  for (let cell = 0; cell < chances.length; cell++) {
    let sum = (chances[cell] ?? 0) * (kernel[0] ?? 0);
    for (let away = 1; away < kernel.length; away++) {
      const weight = kernel[away] ?? 0;
      sum += weight * ((chances[Math.max(0, cell - away)] ?? 0) + (chances[Math.min(chances.length - 1, cell + away)] ?? 0));
    }
    result[cell] = sum;
  }
  return result;
}
