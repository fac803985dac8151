import { noElement } from "../../lists.js";
import type { CostByEstablishment } from "../option-numbers.js";

/** How a future is expected to go: made once for all amounts of an option, whose expectation is then a sum. */
export interface ExpectedCourse {
  /** f: times that an infestation begins in each year of the horizon. */
  readonly begins: readonly number[];
  /** k: chance of each year that the lake is clean when it begins and stays so. */
  readonly clean: readonly number[];
  /** Chance that mussels establish at all within the horizon. */
  readonly ever: number;
}

/**
 * f(t) = h(t) R(t) and k(t) = (1−h(t)) R(t), with R the chance that the lake is clean when year t begins:
 * R(t) = k(t−1) + Σ q(a) f(t−a).
 * @param hazards h: chance of establishment in year 1, 2, … of the horizon
 * @param contained q: chance that an infestation is contained in its first, second, … year
 */
export function expectedCourse(hazards: readonly number[], contained: readonly number[]): ExpectedCourse {
  const begins = hazards.slice();
  const clean = hazards.slice();
  let never = 1;
  for (let year = 0; year < hazards.length; year++) {
    const hazard = hazards[year] ?? noElement(hazards, year);
    let atRisk = year === 0 ? 1 : (clean[year - 1] ?? 0);
    for (let age = Math.min(contained.length, year); age > 0; age--)
      atRisk += (contained[age - 1] ?? 0) * (begins[year - age] ?? 0);
    begins[year] = hazard * atRisk;
    clean[year] = (1 - hazard) * atRisk;
    never *= 1 - hazard;
  }
  return { begins, clean, ever: 1 - never };
}

/** Σ f(t) D(t) + k(t) v(t) g(t) G: the first of `costToGo`. */
export const expectedCost = (costs: CostByEstablishment, { begins, clean }: ExpectedCourse): number =>
  productSum(costs.established, begins) + productSum(costs.clean, clean);

/** What is expected of amounts that fall due whenever an infestation begins, by the year in which it does. */
export function productSum(amounts: readonly number[], weights: readonly number[]): number {
  let sum = 0;
  for (let year = 0; year < weights.length; year++)
    sum += (amounts[year] ?? noElement(amounts, year)) * (weights[year] ?? noElement(weights, year));
  return sum;
}
