import { at } from "../../../lists.js";
import type { PlanEntry } from "../catalogue.js";
import type { ImpossiblePlan, Plan } from "../component.js";
import { type Candidates, candidatePlans } from "../plan.js";
import type { Contender } from "./search.js";
import type { PartYear } from "./untouched.js";

/** The plans that are possible for a part in some operating year, and those that are so in none. */
export interface Contenders {
  readonly contenders: readonly Contender[];
  readonly impossible: readonly ImpossiblePlan[];
}

/**
 * A plan is operated by the year that comes. In a year of a record that does not allow it, the part is kept by its way
 * out: the cheapest plan that is possible in that year, installs nothing and is done within the year.
 * @param cheapestIn the plan of least value in an operating year
 */
export function contendersOf(
  parts: readonly PartYear[],
  cheapestIn: (year: number, plans: readonly Plan[]) => Plan,
): Contenders {
  const years = parts.map(({ component, context }) => candidatePlans(component, context));
  const waysOut: Plan[] = [];
  const wayOut = (year: number): Plan => {
    waysOut[year] ??= cheapestIn(year, at(years, year).plans.filter(isWithinYear));
    return waysOut[year];
  };
  const contenders: Contender[] = [];
  const impossible: ImpossiblePlan[] = [];
  for (const entry of at(parts, 0).context.plans) {
    const possible = years.find((year) => plansOf(entry, year).length > 0);
    if (possible === undefined) {
      impossible.push(...at(years, 0).impossible.filter(({ id }) => id === entry.id));
      continue;
    }
    for (const plan of plansOf(entry, possible)) {
      const byYear = years.map((year, index) => samePlan(plan, year) ?? wayOut(index));
      contenders.push({ plan: samePlan(plan, at(years, 0)) ?? plan, byYear });
    }
  }
  return { contenders, impossible };
}

const plansOf = ({ id }: PlanEntry, { plans }: Candidates) => plans.filter(({ entry }) => entry.id === id);

const samePlan = ({ id }: Plan, { plans }: Candidates) => plans.find((plan) => plan.id === id);

const isWithinYear = ({ entry, routine }: Plan) =>
  !("capital" in entry.numbers) && !(routine.by === "interval" && routine.months > 12);
