import { noElement, numbersBy } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { OtherWay } from "../inputs.js";

/** Rates of the other ways in by year of the horizon; see `FoundingRates`. */
export interface OtherRates {
  readonly unchecked: readonly number[];
  readonly checked: readonly number[];
}

/**
 * Rates of the ways in that a study names: −ln(1−p) in each year, times the chance that the source is infested by
 * then, 1 − (1−q)^t in year t for a source that becomes infested with the chance q a year.
 */
export function namedWays(ways: readonly OtherWay[], horizon: number): OtherRates {
  const rates = { unchecked: numbersBy(horizon, () => 0), checked: numbersBy(horizon, () => 0) };
  for (const way of ways) {
    const own = way.checked ? rates.checked : rates.unchecked;
    const rate = -Math.log1p(-way.chance);
    for (let year = 0; year < horizon; year++) {
      const ofSource = chanceOfSource(way, year);
      if (ofSource > 0) own[year] = (own[year] ?? noElement(own, year)) + rate * ofSource;
    }
  }
  return rates;
}

/** Chance that the source of a way in is infested in a year of the horizon; 0 is the first. */
export function chanceOfSource({ fromYear = 0, sourceChance }: OtherWay, year: number): number {
  if (year < fromYear) return 0;
  return sourceChance === undefined ? 1 : 1 - (1 - sourceChance) ** (year - fromYear + 1);
}

/** Where a study names none, the other ways are the share φ of all foundings without a program: φ/(1−φ) of the boats'. */
export function typicalWays(ofBoats: number, horizon: number, source: Assumed): OtherRates {
  const share = source("arrival.other-share");
  const rate = (ofBoats * share) / (1 - share);
  return { unchecked: numbersBy(horizon, () => rate), checked: numbersBy(horizon, () => 0) };
}
