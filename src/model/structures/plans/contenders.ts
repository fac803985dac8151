import { at } from "../../../lists.js";
import type { PlanEntry } from "../catalogue.js";
import type { ImpossiblePlan, Plan } from "../component.js";
import { impossiblePlans, possiblePlans } from "../plan.js";
import type { Contender } from "./search.js";
import type { PartYear } from "./untouched.js";

/**
 * The plans that are possible for a part in some operating year. A plan is operated by the year that comes. In a year of a
 * record that does not allow it, the part is kept by its way out: the cheapest plan that is possible in that year, installs
 * nothing and is done within the year.
 * @param cheapestIn the plan of least value in an operating year
 */
export function contendersOf(
  parts: readonly PartYear[],
  cheapestIn: (year: number, plans: readonly Plan[]) => Plan,
): readonly Contender[] {
  const years = parts.map(({ component, context }) => possiblePlans(component, context));
  const [only, ...others] = years;
  if (only && others.length === 0) return only.map((plan) => ({ plan, byYear: [plan] }));
  const waysOut: Plan[] = [];
  const wayOut = (year: number): Plan => {
    waysOut[year] ??= cheapestIn(year, at(years, year).filter(isWithinYear));
    return waysOut[year];
  };
  return at(parts, 0).context.plans.flatMap((entry) => {
    const possible = years.find((plans) => plansOf(entry, plans).length > 0) ?? [];
    return plansOf(entry, possible).map((plan) => ({
      plan: samePlan(plan, at(years, 0)) ?? plan,
      byYear: years.map((plans, index) => samePlan(plan, plans) ?? wayOut(index)),
    }));
  });
}

/** The plans that are possible in no operating year, with what stands against them in the first. */
export function impossibleIn(parts: readonly PartYear[]): readonly ImpossiblePlan[] {
  const [first = [], ...others] = parts.map(({ component, context }) => impossiblePlans(component, context));
  return first.filter(({ id }) => others.every((plans) => plans.some((plan) => plan.id === id)));
}

const plansOf = ({ id }: PlanEntry, plans: readonly Plan[]) => plans.filter(({ entry }) => entry.id === id);

const samePlan = ({ id }: Plan, plans: readonly Plan[]) => plans.find((plan) => plan.id === id);

const isWithinYear = ({ entry, routine }: Plan) =>
  !("capital" in entry.numbers) && !(routine.by === "interval" && routine.months > 12);
