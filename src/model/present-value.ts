import { at, noElement, numbersBy } from "../lists.js";
import type { CostStream, YearlyCost } from "./cost-streams.js";
import { Money } from "./money/decimal.js";
import type { PriceGroup } from "./money/price-group.js";
import { type Rises, riseIn } from "./money/price-rises.js";
import { type ByAge, expectedByYear, presentWeights, weightedTotal } from "./risk/expectation.js";
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
  const risen = (group: PriceGroup) =>
    numbersBy(factors.length, (year) => at(factors, year) * riseIn(group, year, rises));
  return {
    ...presentWeights(statesByYear, factors),
    rising: new Map([...rises.keys()].map((group) => [group, presentWeights(statesByYear, risen(group))])),
  };
}

/** Weights of a group's costs. */
export const weightsOf = (group: PriceGroup, weights: CostWeights): ByAge =>
  weights.rising.get(group) ?? weights;

type PlainCost = Pick<CostStream, "plain">;

/** A cost that there is not. */
export const noCost: YearlyCost = {
  ...{ byYear: [], harm: [], control: [], rising: new Map() },
  plain: { byYear: [], harm: [], control: [] },
};

/**
 * Expected present value of a yearly cost of an infestation: all of it while mussels are known, its harm before. With
 * ug the weights of a group g whose price rises, X = Σ C(a) u(a) + Σ Cg(a) (ug(a) − u(a)).
 * @param unnoticed the same cost before, where that differs
 */
export function presentValueOf(cost: YearlyCost, weights: CostWeights, unnoticed: YearlyCost = cost): Money {
  let value = streamValue(cost, weights, unnoticed);
  for (const [group, risen] of weights.rising) {
    const known = cost.rising.get(group);
    const before = unnoticed.rising.get(group);
    value += streamValue(known, risen, before) - streamValue(known, weights, before);
  }
  return new Money(value);
}

const streamValue = (cost: PlainCost = noCost, weights: ByAge, unnoticed: PlainCost = noCost): number =>
  weightedTotal(unnoticed.plain.harm, weights.unnoticed) + weightedTotal(cost.plain.byYear, weights.noticed);

/** Parts of the present value by year of the infestation, first its first year. */
export function presentValueByAge(cost: YearlyCost, weights: CostWeights): Money[] {
  const only = (age: number, { unnoticed, noticed }: ByAge): ByAge => ({
    unnoticed: unnoticed.map((weight, year) => (year === age ? weight : 0)),
    noticed: noticed.map((weight, year) => (year === age ? weight : 0)),
  });
  return cost.plain.byYear.map((_, age) =>
    presentValueOf(cost, {
      ...only(age, weights),
      rising: new Map([...weights.rising].map(([group, risen]) => [group, only(age, risen)])),
    }),
  );
}

/** Expected cost of an infestation in each year of the horizon, with its rises, in prices of the price year. */
export function expectedLosses(
  { unnoticed, noticed }: { unnoticed: YearlyCost; noticed: YearlyCost },
  statesByYear: readonly StateProbabilities[],
  rises: Rises,
): number[] {
  const total = streamLosses(unnoticed, noticed, statesByYear);
  for (const [group, rise] of rises) {
    const known = noticed.rising.get(group);
    const before = unnoticed.rising.get(group);
    if (!known && !before) continue;
    streamLosses(before, known, statesByYear).forEach((loss, year) => {
      const more = (rise[year] ?? noElement(rise, year)) - 1;
      total[year] = (total[year] ?? noElement(total, year)) + loss * more;
    });
  }
  return total;
}

function streamLosses(
  unnoticed: PlainCost | undefined,
  noticed: PlainCost | undefined,
  statesByYear: readonly StateProbabilities[],
): number[] {
  const none = statesByYear.map(() => 0);
  const cost = { unnoticed: unnoticed?.plain.harm ?? none, noticed: noticed?.plain.byYear ?? none };
  return expectedByYear(cost, statesByYear);
}
