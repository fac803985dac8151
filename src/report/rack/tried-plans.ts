import type { ComponentResult, TriedPlan } from "../../model/structures/component.js";

const known = new WeakMap<ComponentResult, readonly TriedPlan[]>();

/** Every plan tried on a part, cheapest first; tried again only once for the whole report. */
export function triedPlans(component: ComponentResult): readonly TriedPlan[] {
  const found = known.get(component);
  if (found) return found;
  const plans = [...component.everyPlan()].sort((a, b) => a.yearlyCost - b.yearlyCost);
  known.set(component, plans);
  return plans;
}

export const keepsLimits = ({ brokenLimit }: TriedPlan) => brokenLimit === undefined;

/** The cheapest plan beside the chosen one. */
export function runnerUpOf(component: ComponentResult): TriedPlan | undefined {
  return triedPlans(component).find(({ plan }) => plan.id !== component.chosen.plan.id);
}

/** Months between the cleanings that go with a plan; 0 where none does. */
export const intervalOf = ({ plan: { routine } }: TriedPlan): number =>
  routine.by === "interval" ? routine.months : 0;
