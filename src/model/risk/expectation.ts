import { noElement } from "../../lists.js";
import type { StateProbabilities } from "./state-probabilities.js";

/** Something for each age of an infestation, first its first year: while it is unnoticed, and once it is noticed. */
export interface ByAge<T = number> {
  readonly unnoticed: readonly T[];
  readonly noticed: readonly T[];
}

/**
 * Exact expected cost of each year of the horizon, without sampling: the cost in each year a of an infestation times
 * the chance that it is then in that year, E(t) = Σ L(a) N(t,e) + Σ M(a) U(t,e) over e = 1 … t, with a = t − e + 1.
 * @param cost M and L: cost in the first, second, … year of an infestation that is not noticed, and of one that is
 */
export function expectedByYear(cost: ByAge, statesByYear: readonly StateProbabilities[]): number[] {
  const { unnoticed: before, noticed: after } = cost;
  return statesByYear.map(({ unnoticed, noticed }, year) => {
    let expected = 0;
    for (let since = 0; since <= year; since++) {
      const age = year - since;
      expected +=
        (after[age] ?? noElement(after, age)) * (noticed[since] ?? noElement(noticed, since)) +
        (before[age] ?? noElement(before, age)) * (unnoticed[since] ?? noElement(unnoticed, since));
    }
    return expected;
  });
}

/**
 * What one unit of cost in the first, second, … year of an infestation weighs in the present value, if it is noticed
 * and if it is not: discount factor × chance, u(a) = Σ v(t) N(t,t−a+1) over t = a, a+1, …, with a = 1 for the first
 * year, and likewise of U. Present value = Σ cost × weight, by exchange of the sums.
 */
export function presentWeights(
  statesByYear: readonly StateProbabilities[],
  factors: readonly number[],
): ByAge {
  const weights = { unnoticed: [] as number[], noticed: [] as number[] };
  for (let age = 0; age < factors.length; age++) {
    let before = 0;
    let known = 0;
    for (let year = age; year < factors.length; year++) {
      const since = year - age;
      const factor = factors[year] ?? noElement(factors, year);
      const { unnoticed, noticed } = statesByYear[year] ?? noElement(statesByYear, year);
      before += factor * (unnoticed[since] ?? noElement(unnoticed, since));
      known += factor * (noticed[since] ?? noElement(noticed, since));
    }
    weights.unnoticed.push(before);
    weights.noticed.push(known);
  }
  return weights;
}

/**
 * Sum of amounts × weights: a present value if the weights are discount factors, an expected present value if
 * they come from `presentWeights`. Weights are no whole numbers, and the sum is as exact as they are.
 */
export function weightedTotal(amounts: readonly number[], weights: readonly number[]): number {
  let sum = 0;
  for (let year = 0; year < amounts.length; year++)
    sum += (amounts[year] ?? noElement(amounts, year)) * (weights[year] ?? noElement(weights, year));
  return sum;
}
