import { at, sumOf } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import type { PriceTimes } from "../../money/escalation.js";
import { discountFactors } from "../../money/interest.js";
import { type PriceGroup, priceGroupOf } from "../../money/price-group.js";
import { type Escalation, riseIn, risesOf } from "../../money/price-rises.js";
import type { Charge, Priced } from "../component.js";

/**
 * A cost in parts: that of all whose prices go with general inflation, then that of each group whose price rises
 * otherwise, in the order of the weights' groups.
 */
export type Cost = readonly number[];

/** What a cost in each year since establishment weighs when plans are compared. */
export interface PlanWeights {
  readonly groups: readonly PriceGroup[];
  /** By year since establishment, for each part of a cost. */
  readonly byYear: readonly Cost[];
  /** The same of a cost that comes again after every so many years. */
  readonly repeating: (every: number) => readonly Cost[];
  /** Of all years together, without rises of prices: what a present value is divided by to tell a year's cost. */
  readonly whole: number;
}

/** What of a study's money the weights take. */
export interface PlanMoney extends PriceTimes {
  readonly horizon: number;
  readonly discountRate: number;
  readonly escalation?: readonly Escalation[] | undefined;
}

/** When an infestation begins, as the choice of a plan takes it. */
export interface InfestationTime {
  readonly isInfested: boolean;
  /** Years for which the lake has been infested at the start of the horizon. */
  readonly yearsInfested: number;
}

/**
 * Weights for a plan that serves all options, V = Σ w(a) C(a): mussels may establish in each year of the horizon with
 * the same chance, w(a) = Σ v(t) e(t)/T over t = a … T, with a = 1 for the first year of an infestation. In a lake that is infested
 * already the years are those of the horizon, w(b + t) = v(t) e(t).
 */
export function planWeights(money: PlanMoney, { isInfested, yearsInfested }: InfestationTime): PlanWeights {
  const { horizon } = money;
  const factors = discountFactors(horizon, money.discountRate, money.timing);
  const rises = risesOf(money.escalation ?? [], horizon, money);
  const groups = [...rises.keys()];
  const risen = [factors, ...groups.map((group) => factors.map((v, year) => v * riseIn(group, year, rises)))];
  const parts = risen.map((values) => (isInfested ? values : values.map((_, age) => fromAge(values, age))));
  const before = Array.from({ length: yearsInfested }, () => parts.map(() => 0));
  const byYear = [...before, ...factors.map((_, year) => parts.map((values) => at(values, year)))];
  return {
    groups,
    byYear,
    repeating: remembered((every) => repeatingWeights(byYear, every)),
    whole: sumOf(at(parts, 0)),
  };
}

const fromAge = (values: readonly number[], age: number) => sumOf(values.slice(age)) / values.length;

function repeatingWeights(byYear: readonly Cost[], every: number): readonly Cost[] {
  const sums = byYear.map((weight) => [...weight]);
  for (let year = sums.length - 1 - every; year >= 0; year--)
    addCost(at(sums, year), at(sums, year + every), 1);
  return sums;
}

/** The part of a cost that a charge belongs to. */
export function partOf(charge: Charge, { groups }: PlanWeights): number {
  return groups.indexOf(priceGroupOf(charge)) + 1;
}

/** Adds what lines cost to the parts of a cost. */
export function addTo(sums: number[], lines: readonly Priced[], weights: PlanWeights): void {
  for (const line of lines) {
    const part = partOf(line, weights);
    sums[part] = (sums[part] ?? 0) + line.quantity * line.unitRate;
  }
}

/** Adds a share of one cost to another. */
export function addCost(sums: number[], cost: Cost, share: number): void {
  for (let part = 0; part < cost.length; part++) sums[part] = (sums[part] ?? 0) + (cost[part] ?? 0) * share;
}

export function costOfLines(lines: readonly Priced[], weights: PlanWeights): number[] {
  const cost = noCost(weights);
  addTo(cost, lines, weights);
  return cost;
}

/** A cost of nothing. A weight's copy has as many parts, and the engine takes it for a list of fractional numbers at once. */
export function noCost({ byYear }: PlanWeights): number[] {
  const cost = at(byYear, 0).slice();
  for (let part = 0; part < cost.length; part++) cost[part] = 0;
  return cost;
}

/** A cost by its weight. */
export function weighed(cost: Cost, weight: Cost): number {
  let sum = 0;
  for (let part = 0; part < cost.length; part++) sum += (cost[part] ?? 0) * (weight[part] ?? 0);
  return sum;
}
