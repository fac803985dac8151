import type { Assumed } from "../../model/assumed.js";
import type { StudyInput } from "../../model/inputs.js";
import type { Component } from "../../model/structures/component.js";
import { type Contexts, lakeWater } from "../../model/structures/context.js";
import type { Structure } from "../../model/structures/kinds.js";
import { candidatePlans } from "../../model/structures/plan.js";
import { planWeights } from "../../model/structures/plans/weights.js";
import { componentsOf } from "../../model/structures/structure.js";
import type { Contradiction } from "../reading/contradiction.js";

/** Prescribed plans for an unknown part, not in the catalogue, or impossible there. */
export function pinnedProblems(input: StudyInput, assumed: Assumed): Contradiction[] {
  if (input.structures.every(({ pinned }) => pinned.length === 0)) return [];
  const water = lakeWater(input.lake, 1, assumed, {
    plans: input.plans,
    discountRate: input.money.discountRate,
    assumed,
    planWeights: planWeights(input.money, { isInfested: false, yearsInfested: 0 }),
  });
  const contexts = water.under(input.lake);
  return input.structures.flatMap((structure, index) =>
    problemsOf(structure, contexts).map((problem) => ({
      ...problem,
      path: ["structures", index, "pinned", ...problem.path],
    })),
  );
}

function problemsOf(structure: Structure, contexts: Contexts): Contradiction[] {
  if (structure.pinned.length === 0) return [];
  const years = contexts.map((context) => ({ context, components: componentsOf(structure, context) }));
  const names = componentsOf(structure, contexts[0]).map(({ name }) => name);
  return structure.pinned.flatMap(({ part, plan }, index): Contradiction[] => {
    if (!names.includes(part)) {
      const allowed =
        names.length === 0 ? "no plan: nothing here is kept by plans" : `one of ${names.join(", ")}`;
      return [{ path: [index, "part"], found: `"${part}"`, allowed }];
    }
    for (const { context, components } of years) {
      const component = components.find(({ name }) => name === part);
      const allowed = component && planProblem(plan, candidatePlans(component, context), component);
      if (allowed !== undefined) return [{ path: [index, "plan"], found: `"${plan}"`, allowed }];
    }
    return [];
  });
}

/** Plans allowed instead; undefined if the plan is possible. */
function planProblem(
  id: string,
  { plans, impossible }: ReturnType<typeof candidatePlans>,
  { name }: Component,
): string | undefined {
  if (plans.some((plan) => plan.id === id)) return undefined;
  const reason = impossible.find((plan) => plan.id === id)?.reason;
  const possible = `one of ${plans.map((plan) => plan.id).join(", ")}`;
  return reason === undefined ? possible : `a plan that is possible for the ${name} (${reason}): ${possible}`;
}
