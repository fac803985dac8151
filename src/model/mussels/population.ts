import type { Assumed } from "../assumed.js";
import type { Lake } from "../lake/lake.js";

interface PopulationParameters {
  /** Share of capacity at establishment. */
  readonly initialShare: number;
  /** Share of capacity that counts as the peak. */
  readonly peakShare: number;
  readonly yearsToPeak: number;
  /** Density after the decline over density at the peak; 1 for no decline. */
  readonly laterOverPeak: number;
  /** Years over which the decline runs, from the year of the peak. */
  readonly declineYears: number;
}

const quaggaYearsToPeak = {
  deep: "population.years-to-peak.quagga-deep",
  shallow: "population.years-to-peak.quagga-shallow",
} as const;

/** Parameters by species and lake type: quagga is slower in a deep lake. */
export function populationParameters(lake: Lake, assumed: Assumed): PopulationParameters {
  const yearsToPeak =
    lake.species === "zebra" ? "population.years-to-peak.zebra" : quaggaYearsToPeak[lake.depthType];
  return {
    initialShare: assumed("population.initial-share"),
    peakShare: assumed("population.peak-share"),
    yearsToPeak: assumed(yearsToPeak),
    laterOverPeak: assumed("population.later-over-peak"),
    declineYears: assumed("population.decline-years"),
  };
}

/**
 * Rate of the logistic curve that leads from `initialShare` to `peakShare` of capacity in `yearsToPeak`, 1/yr:
 * r = [ln((1−s)/s) + ln(p/(1−p))]/T. From 1 % to 95 %: (ln 99 + ln 19)/T.
 * Years to the peak: Karatayev and others 2011, 2015 (from memory).
 */
export function logisticRate({ initialShare, peakShare, yearsToPeak }: PopulationParameters): number {
  return (logit(peakShare) - logit(initialShare)) / yearsToPeak;
}

const logit = (share: number) => Math.log(share / (1 - share));

/**
 * Lake-wide density over capacity, 0 to 1, `years` after establishment: logistic, n = 1/(1 + exp(−r t)·(1−s)/s),
 * times a linear decline after the peak, 1 − (1−q)·min(1, (t − T)/y), where one is assumed (Hetherington and others
 * 2019).
 */
export function densityShare(years: number, parameters: PopulationParameters): number {
  const start = logit(parameters.initialShare);
  const grown = 1 / (1 + Math.exp(-(start + logisticRate(parameters) * years)));
  const { laterOverPeak, declineYears, yearsToPeak } = parameters;
  if (years <= yearsToPeak) return grown;
  return grown * (1 - (1 - laterOverPeak) * Math.min(1, (years - yearsToPeak) / declineYears));
}

/** First month from which a density no longer changes. */
export function settledMonth(density: readonly number[]): number {
  return density.findLastIndex((share) => share !== density.at(-1)) + 1;
}
