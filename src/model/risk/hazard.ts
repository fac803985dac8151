import { noElement } from "../../lists.js";

/** What leads from the boats that reach the water to a yearly chance. Rates are −ln(1−h), a year. */
export interface FoundingRates {
  /** Factor on the foundings of boats: suitability of the water, and what comparable lakes and clean years say. */
  readonly ofBoats: number;
  /** Rates of the other ways in, by year of the horizon: those that no check stops, and those that stations check. */
  readonly unchecked: readonly number[];
  readonly checked: readonly number[];
  /** Fouled launches a year without a program. */
  readonly openLaunches: number;
  /** c: foundings go with launches to this power, where all classes change alike. */
  readonly shape: number;
}

/** What reaches the water in a year, with foundings as `togetherOf` has them. */
export interface Reaching {
  readonly launches: number;
  readonly foundings: number;
}

/**
 * Chance that mussels establish in a year of the horizon: h = 1 − exp(−(f μ + λ + λ′ F/F₀)), μ the foundings of
 * boats and f their factor, λ the other ways in that no check stops, λ′ those that stations check, which fall with the
 * fouled launches F that get through.
 */
export function yearlyHazard(reaching: Reaching, year: number, rates: FoundingRates, scale?: number): number {
  return chanceOf(foundingRate(reaching, year, rates, scale));
}

/**
 * `yearlyHazard` of every year of the horizon; what is the same in two years in a row is worked out once.
 * @param scale times the foundings of boats
 */
export function yearlyHazards(
  reachingByYear: readonly Reaching[],
  rates: FoundingRates,
  scale?: number,
): number[] {
  const hazards: number[] = [];
  let rateBefore = Number.NaN;
  let hazard = 0;
  for (let year = 0; year < rates.unchecked.length; year++) {
    const rate = foundingRate(reachingByYear[year] ?? noElement(reachingByYear, year), year, rates, scale);
    if (rate !== rateBefore) hazard = chanceOf(rate);
    rateBefore = rate;
    hazards.push(hazard);
  }
  return hazards;
}

const chanceOf = (rate: number): number => -Math.expm1(-rate);

/** The rate of `yearlyHazard`. */
export function foundingRate(
  { launches, foundings }: Reaching,
  year: number,
  { ofBoats, unchecked, checked: checkedWays, openLaunches }: FoundingRates,
  scale = 1,
): number {
  const checked = checkedWays[year] ?? noElement(checkedWays, year);
  const share = shareThrough(launches, openLaunches);
  // A way that is certain has an infinite rate, of which nothing gets through where the share is none.
  const through = share === 0 ? 0 : checked * share;
  return ofBoats * scale * foundings + (unchecked[year] ?? noElement(unchecked, year)) + through;
}

/** Without fouled boats there is nothing from which to tell what checks let through: all of it. */
const shareThrough = (launches: number, open: number) => (open === 0 ? 1 : launches / open);
