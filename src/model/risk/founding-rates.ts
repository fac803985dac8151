import { at, noElement, numbersBy } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { Boats, LakeKind, LearnedRate } from "../inputs.js";
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
  const byLakes = boatsOfLakes(boats, suitability, source);
  const pooled = byLaunches ** weightOfBoats * byLakes ** (1 - weightOfBoats);
  return { byLaunches, byLakes, pooled };
}

/**
 * What comparable lakes say of the boats of this one without a program. A rate of the study's own, λ, is that of this
 * lake, all ways in together, with the checks that let the share x through: λ = x b + x λ′ + λ″ with the named ways that
 * stations check, λ′, and do not, λ″; or with the typical share φ of other ways, λ = x b + b φ/(1−φ).
 */
function boatsOfLakes(
  { comparable: { rate, checksLetThrough }, otherWays }: Boats,
  suitability: number,
  source: Assumed,
): number {
  const otherShare = source("arrival.other-share");
  if (!("own" in rate)) return rateOfLakes(rate.kind, source) * (1 - otherShare) * suitability;
  if (!otherWays) return rate.own / (checksLetThrough + otherShare / (1 - otherShare));
  const { unchecked, checked } = namedWays(otherWays, 1);
  return Math.max(0, (rate.own - at(unchecked, 0)) / checksLetThrough - at(checked, 0));
}

/** Yearly rate of lakes of a kind in suitable water without checks: of those with checks, their rate over what these let through. */
export function rateOfLakes(kind: LakeKind, source: Assumed): number {
  switch (kind) {
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

/** A year's foundings that a rate can be divided by: fewer, or none, tell nothing. */
const leastFoundings = 1e-300;

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
  const scaled = (rates: readonly number[]) =>
    factor === 1
      ? rates
      : numbersBy(rates.length, (year) => (rates[year] ?? noElement(rates, year)) * factor);
  return {
    ofBoats: open.foundings < leastFoundings ? suitability * factor : (pooled / open.foundings) * factor,
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
