import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { Boats, ComparableLakes, LearnedRate } from "../inputs.js";
import type { FoundingRates, Reaching } from "./hazard.js";
import { namedWays, type OtherRates, typicalWays } from "./other-ways.js";

/** The two ways to the yearly rate of the boats without a program, and what drives the answer. Rates a year. */
export interface BoatRates {
  /** From fouled launches. */
  readonly byLaunches: number;
  /** From comparable lakes, without the other ways in and without checks. */
  readonly byLakes: number;
  /** Their weighted geometric mean. */
  readonly pooled: number;
}

/**
 * The rate of the boats without a program by both ways: f μ from launches, and what comparable lakes say of them. The
 * pooled rate is exp(w ln a + (1−w) ln b): with w and 1−w inverse to the variances, the mean of two independent
 * estimates of ln λ.
 */
export function boatRates(open: Reaching, suitability: number, boats: Boats, source: Assumed): BoatRates {
  const { weightOfBoats } = boats.comparable;
  const byLaunches = open.foundings * suitability;
  const byLakes = rateOfLakes(boats.comparable, source) * (1 - source("arrival.other-share")) * suitability;
  const pooled = byLaunches ** weightOfBoats * byLakes ** (1 - weightOfBoats);
  return { byLaunches, byLakes, pooled };
}

/** Yearly rate of comparable lakes in suitable water without a program. A rate that has checks in it is raised by what they stop. */
export function rateOfLakes({ rate, checksLetThrough }: ComparableLakes, source: Assumed): number {
  if ("own" in rate) return rate.own / checksLetThrough;
  switch (rate.kind) {
    case "open":
      return source("arrival.base-rate-open");
    case "busy":
      return source("arrival.base-rate-open") * source("arrival.busy-factor");
    case "inspected":
      return source("arrival.base-rate-inspected") / source("arrival.inspected-through");
    case "unknown":
      return between(
        source("arrival.base-rate-open"),
        source("arrival.base-rate-inspected") / source("arrival.inspected-through"),
        source("arrival.kind-unknown"),
      );
  }
}

const between = (one: number, other: number, share: number) => one ** (1 - share) * other ** share;

/** All that turns a year's boats into a chance, from those of the option that does nothing. */
export function foundingRates(
  open: Reaching,
  suitability: number,
  { boats, horizon }: { readonly boats: Boats; readonly horizon: number },
  source: Assumed,
): FoundingRates {
  const { pooled } = boatRates(open, suitability, boats, source);
  const { unchecked, checked } = otherRatesOf(pooled, boats, horizon, source);
  const factor = learnedFactor(pooled + at(unchecked, 0) + at(checked, 0), boats.learned);
  const scaled = (rates: readonly number[]) => (factor === 1 ? rates : rates.map((rate) => rate * factor));
  return {
    ofBoats: open.foundings === 0 ? suitability * factor : (pooled / open.foundings) * factor,
    unchecked: scaled(unchecked),
    checked: scaled(checked),
    openLaunches: open.launches,
    shape: source("arrival.shape"),
  };
}

const otherRatesOf = (pooled: number, { otherWays }: Boats, horizon: number, source: Assumed): OtherRates =>
  otherWays ? namedWays(otherWays, horizon) : typicalWays(pooled, horizon, source);

/** What clean years make of a rate; see `LearnedRate`. */
function learnedFactor(rate: number, learned: LearnedRate | undefined): number {
  if (!learned || rate === 0 || !Number.isFinite(rate)) return 1;
  const { medianBefore, medianAfter, narrowing } = learned;
  return (medianAfter * (rate / medianBefore) ** narrowing) / rate;
}
