import { noElement, numbersBy } from "../../lists.js";
import { afterContainment, type CostByEstablishment, costToGo } from "../option-numbers.js";
import { type ExpectedCourse, expectedCost } from "./expected-course.js";

/** What an option comes to in one future. */
export interface OptionFuture {
  /** Present cost on average over the years in which mussels may establish: luck is left out. */
  readonly expected: number;
  /** Present cost with the year in which they do. */
  readonly cost: number;
  /** That year of the horizon, counted from 0; as many as it has if they do not. */
  readonly establishment: number;
}

/**
 * Chance of mussels when the horizon ends in place of a cost: established in a year, 1 less the chance to be contained
 * before the end. With it `costToGo` and `optionFuture` tell chances.
 */
export function infestedAtEnd({ clean, contained }: CostByEstablishment): CostByEstablishment {
  const years = clean.length;
  const established = numbersBy(years, (year) =>
    contained.slice(0, years - year).reduce((chance, success) => chance - success, 1),
  );
  return { clean: clean.map(() => 0), established, contained };
}

/**
 * An option in a future. Mussels establish in the first year t with H(t) = 1 − Π (1−h) above the luck u: one number for
 * all options, so that whatever lowers the chances puts the year off in each future. What a containment that
 * succeeds leads to is taken at its expectation.
 * @param luck u: from 0 up to 1, uniform over the futures
 * @param course of these chances
 */
export function optionFuture(
  costs: CostByEstablishment,
  hazards: readonly number[],
  luck: number,
  course: ExpectedCourse,
): OptionFuture {
  const establishment = establishmentYear(hazards, luck);
  const expected = expectedCost(costs, course);
  return { expected, cost: costOfEstablishment(costs, hazards, establishment), establishment };
}

/** Present cost if mussels establish in a year of the horizon, counted from 0; as many as it has if they do not. */
export function costOfEstablishment(
  costs: CostByEstablishment,
  hazards: readonly number[],
  year: number,
): number {
  const { clean, established, contained } = costs;
  let cost = 0;
  for (let before = 0; before < year; before++) cost += clean[before] ?? noElement(clean, before);
  if (year === hazards.length) return cost;
  cost += established[year] ?? noElement(established, year);
  return contained.length === 0 ? cost : cost + afterContainment(contained, costToGo(costs, hazards), year);
}

/** First year in which mussels establish, counted from 0; as many as the horizon has if they do not. */
export function establishmentYear(hazards: readonly number[], luck: number): number {
  let clean = 1;
  for (let year = 0; year < hazards.length; year++) {
    clean *= 1 - (hazards[year] ?? noElement(hazards, year));
    if (1 - clean > luck) return year;
  }
  return hazards.length;
}
