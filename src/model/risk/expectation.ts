import { at } from "../lake/calendar.js";
import { type Money, noMoney } from "../money/line.js";

/**
 * Exact expected cost of each year of the horizon, without sampling: the cost a years after establishment,
 * weighed by the chance that establishment was a years ago. Under a constant hazard h that sum follows from the
 * year before, E(t) = h L(t) + (1−h) E(t−1). A hazard of 1 is a lake infested from year 1.
 * @param costBySinceYear L: cost in the first, second, … year since establishment
 */
export function expectedByYear(costBySinceYear: readonly Money[], hazard: number, horizon: number): Money[] {
  const expected: Money[] = [];
  let before = noMoney;
  for (let year = 0; year < horizon; year++) {
    before = at(costBySinceYear, year)
      .times(hazard)
      .plus(before.times(1 - hazard));
    expected.push(before);
  }
  return expected;
}

/**
 * What one unit of cost in the first, second, … year since establishment weighs in the present value:
 * the sum over years of chance × discount factor, u(a) = Σ v(t) h(1−h)^(t−a) over t = a, a+1, …, with a = 1 for
 * the first year. Present value = Σ cost × weight, by exchange of the sums.
 */
export function presentWeights(establishment: readonly number[], factors: readonly number[]): number[] {
  return factors.map((_, since) =>
    factors.slice(since).reduce((sum, factor, index) => sum + factor * at(establishment, index), 0),
  );
}

/**
 * Sum of amounts × weights: a present value if the weights are discount factors, an expected present value if
 * they come from `presentWeights`.
 */
export function weightedSum(amounts: readonly Money[], weights: readonly number[]): Money {
  return amounts.reduce<Money>((sum, amount, year) => sum.plus(amount.times(at(weights, year))), noMoney);
}
