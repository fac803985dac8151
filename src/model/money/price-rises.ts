import { at } from "../../lists.js";
import { centsPerUnit } from "./decimal.js";
import { growthFactors, type PriceTimes } from "./escalation.js";
import type { CostLine } from "./line.js";
import { type PriceGroup, priceGroupOf } from "./price-group.js";

/** What prices of a group become in year 1, 2, … of the horizon for 1 in the price year; groups without a rise are absent. */
export type Rises = ReadonlyMap<PriceGroup, readonly number[]>;

export interface Escalation {
  readonly group: PriceGroup;
  /** Yearly rise above general inflation; negative where a price falls behind. */
  readonly rate: number;
}

/** Rises of the groups over a horizon, from the price year to each flow. */
export function risesOf(
  escalation: readonly Escalation[],
  horizon: number,
  times: PriceTimes,
): Map<PriceGroup, number[]> {
  return new Map(escalation.map(({ group, rate }) => [group, growthFactors(horizon, rate, times)]));
}

/**
 * What the same lines cost in each year, plain money in prices of the price year: C(t) = C + Σ (e(t) − 1) Cg, with C the sum of
 * all lines, Cg that of a group g and e its rise.
 */
export function inEachYear(lines: readonly CostLine[], horizon: number, rises: Rises): number[] {
  let cents = 0;
  const rising = new Map<PriceGroup, number>();
  for (const line of lines) {
    const group = priceGroupOf(line);
    cents += line.cents;
    if (rises.has(group)) rising.set(group, (rising.get(group) ?? 0) + line.cents);
  }
  const inYear = Array<number>(horizon).fill(cents / centsPerUnit);
  for (const [group, part] of rising)
    for (let year = 0; year < horizon; year++)
      inYear[year] = at(inYear, year) + (part * (riseIn(group, year, rises) - 1)) / centsPerUnit;
  return inYear;
}

/** e: 1 for a group that goes with general inflation. @param year of the horizon, 0 is the first */
export function riseIn(group: PriceGroup, year: number, rises: Rises): number {
  const factors = rises.get(group);
  return factors ? at(factors, year) : 1;
}
