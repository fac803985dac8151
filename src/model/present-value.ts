import { at } from "../lists.js";
import type { CostStream, YearlyCost } from "./infestation-cost.js";
import { type Money, noMoney } from "./money/decimal.js";
import { plain } from "./money/line.js";
import type { PriceGroup } from "./money/price-group.js";
import { type Rises, riseIn } from "./money/price-rises.js";
import { type ByAge, expectedByYear, presentWeights, weightedSum } from "./risk/expectation.js";
import type { StateProbabilities } from "./risk/state-probabilities.js";

/** What a cost in each year of an infestation weighs in the expected present value. */
export interface CostWeights extends ByAge {
  /** The same for groups of costs whose prices rise otherwise than prices in general: discount factors times rises. */
  readonly rising: ReadonlyMap<PriceGroup, ByAge>;
}

export function costWeights(
  statesByYear: readonly StateProbabilities[],
  factors: readonly number[],
  rises: Rises,
): CostWeights {
  const risen = (group: PriceGroup) => factors.map((factor, year) => factor * riseIn(group, year, rises));
  return {
    ...presentWeights(statesByYear, factors),
    rising: new Map([...rises.keys()].map((group) => [group, presentWeights(statesByYear, risen(group))])),
  };
}

/** Weights of a group's costs. */
export const weightsOf = (group: PriceGroup, weights: CostWeights): ByAge =>
  weights.rising.get(group) ?? weights;

/** A cost that there is not. */
export const noCost: YearlyCost = { byYear: [], harm: [], control: [], rising: new Map() };

/**
 * Expected present value of a yearly cost of an infestation: all of it while mussels are known, its harm before. With
 * ug the weights of a group g whose price rises, X = Σ C(a) u(a) + Σ Cg(a) (ug(a) − u(a)).
 * @param unnoticed the same cost before, where that differs
 */
export function presentValueOf(cost: YearlyCost, weights: CostWeights, unnoticed: YearlyCost = cost): Money {
  let value = streamValue(cost, weights, unnoticed);
  for (const [group, risen] of weights.rising) {
    const [known, before] = [cost, unnoticed].map(({ rising }) => rising.get(group) ?? noCost);
    value = value.plus(streamValue(known, risen, before)).minus(streamValue(known, weights, before));
  }
  return value;
}

function streamValue(cost: CostStream = noCost, weights: ByAge, unnoticed: CostStream = noCost): Money {
  return weightedSum(unnoticed.harm, weights.unnoticed).plus(weightedSum(cost.byYear, weights.noticed));
}

/** Parts of the present value by year of the infestation, first its first year. */
export function presentValueByAge(cost: YearlyCost, weights: CostWeights, unnoticed = cost): Money[] {
  const ofYear = (stream: CostStream, age: number): CostStream => ({
    byYear: stream.byYear.map((amount, year) => (year === age ? amount : noMoney)),
    harm: stream.harm.map((amount, year) => (year === age ? amount : noMoney)),
    control: [],
  });
  const only = (each: YearlyCost, age: number): YearlyCost => ({
    ...ofYear(each, age),
    rising: new Map([...each.rising].map(([group, stream]) => [group, ofYear(stream, age)])),
  });
  return cost.byYear.map((_, age) => presentValueOf(only(cost, age), weights, only(unnoticed, age)));
}

/** Expected cost of an infestation in each year of the horizon, with its rises, in prices of the price year. */
export function expectedLosses(
  { unnoticed, noticed }: { unnoticed: YearlyCost; noticed: YearlyCost },
  statesByYear: readonly StateProbabilities[],
  rises: Rises,
): number[] {
  const total = streamLosses(unnoticed, noticed, statesByYear);
  for (const group of rises.keys()) {
    const part = streamLosses(unnoticed.rising.get(group), noticed.rising.get(group), statesByYear);
    part.forEach((loss, year) => {
      total[year] = at(total, year) + loss * (riseIn(group, year, rises) - 1);
    });
  }
  return total;
}

function streamLosses(
  unnoticed: CostStream | undefined,
  noticed: CostStream | undefined,
  statesByYear: readonly StateProbabilities[],
): number[] {
  const none = statesByYear.map(() => 0);
  const amountsOf = (amounts: readonly Money[] | undefined) => (amounts ? plain(amounts) : none);
  return expectedByYear(
    { unnoticed: amountsOf(unnoticed?.harm), noticed: amountsOf(noticed?.byYear) },
    statesByYear,
  );
}
