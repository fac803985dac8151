import { at, noElement } from "../../../lists.js";
import { months } from "../../lake/calendar.js";
import { addCost, type Cost, noCost, type PlanWeights } from "./weights.js";

/** When mussels are regularly found in the lake: protections are in place then, and inspections made. */
export interface FoundMonths {
  readonly ever: boolean;
  readonly isFound: (month: number) => boolean;
  /** Months since establishment in which they are not. */
  readonly others: readonly number[];
  /** What a cost in each month of the year weighs, over all months in which they are. */
  readonly weights: readonly Cost[];
}

/** @param density by month since establishment; they are found from `foundFrom` on */
export function foundMonths(
  density: readonly number[],
  foundFrom: number,
  planWeights: PlanWeights,
): FoundMonths {
  const weights = months.map(() => noCost(planWeights));
  const others: number[] = [];
  density.forEach((share, month) => {
    if (share >= foundFrom) addCost(at(weights, month % 12), weightIn(month, planWeights), 1);
    else others.push(month);
  });
  return {
    ever: others.length < density.length,
    isFound: (month) => (density[month] ?? noElement(density, month)) >= foundFrom,
    others,
    weights,
  };
}

/** Of a cost in a month since establishment. */
export const weightIn = (month: number, { byYear }: PlanWeights): Cost => at(byYear, Math.floor(month / 12));
