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

/** What is to be said of a plan beside its cost: that it comes to leaving the part, the limit that it passes; empty if neither. */
export const remarkOf = ({ plan, brokenLimit, comesToLeaving }: TriedPlan): string =>
  [comesToLeaving ? `same as leaving it: ${whyLeft(plan)}` : "", brokenLimit ?? ""]
    .filter((text) => text !== "")
    .join("; ");

/** Why a plan comes to leaving the part. */
export const whyLeft = ({ protection }: TriedPlan["plan"]): string =>
  protection ? "mussels stay too few for it to begin" : "no date finds a layer worth a visit";

/** The cheapest plan beside the chosen one that does not come to leaving the part. */
export function runnerUpOf(component: ComponentResult): TriedPlan | undefined {
  return triedPlans(component).find(
    ({ plan, comesToLeaving }) => plan.id !== component.chosen.plan.id && !comesToLeaving,
  );
}

/** Months between the cleanings that go with a plan; 0 where none does. */
export const intervalOf = ({ plan: { routine } }: TriedPlan): number =>
  routine.by === "interval" ? routine.months : 0;
