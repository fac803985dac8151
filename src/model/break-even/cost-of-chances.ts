import { at } from "../../lists.js";
import { remembered } from "../computed-once.js";
import type { CostSettings, OptionCosts } from "../option-costs.js";
import { costByEstablishment, costToGo, numbersOf } from "../option-numbers.js";
import { type FoundingRates, type Reaching, yearlyHazards } from "../risk/hazard.js";

/** An option's cost for any chances of establishment; plain numbers, since a search needs no cents. */
export interface CostOfChances {
  /**
   * Present value of all that an option costs.
   * @param hazards h: chance of establishment in year 1, 2, … of the horizon
   */
  readonly expected: (hazards: readonly number[]) => number;
  /** What one more clean year adds: the cost if mussels establish in year t + 1 for certain less that in year t, and at
   * last never less in the last year. Only of meaning where nothing is contained. */
  readonly ofCleanYears: readonly number[];
}

export function costOfChances(
  option: OptionCosts,
  settings: Pick<CostSettings, "factors" | "rises">,
): CostOfChances {
  const costs = costByEstablishment(numbersOf(option, settings));
  const { clean, established } = costs;
  const work = new Float64Array(clean.length + 1);
  return {
    expected: (hazards) => at(costToGo(costs, hazards, work), 0),
    ofCleanYears: clean.map(
      (program, year) => program + (established[year + 1] ?? 0) - at(established, year),
    ),
  };
}

/**
 * The same at so many times the foundings of boats. Each is worked out once: all options are weighed against one baseline,
 * at the same points of a grid.
 */
export function costAtScales(
  { expected }: CostOfChances,
  reachingByYear: readonly Reaching[],
  rates: FoundingRates,
): (scale: number) => number {
  return remembered((scale) => expected(yearlyHazards(reachingByYear, rates, scale)));
}
