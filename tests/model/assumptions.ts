import { fileURLToPath } from "node:url";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { assumedFrom } from "../../src/assumptions/override.js";
import { exchanged } from "../../src/assumptions/prices.js";
import type { Measure, PlanNumberIds } from "../../src/model/register/plan-numbers.js";
import type { PlanBy, PlanEntry } from "../../src/model/structures/catalogue.js";

export const assumptionSet = loadAssumptions(fileURLToPath(new URL("../../assumptions", import.meta.url)));

/** The shipped assumptions, in US dollars, as a study without overrides reads them. */
export const assumed = assumedFrom(assumptionSet, [], exchanged(1));

/** The shipped assumptions with some of them replaced, in the unit of their entries. */
export function assumedWith(replaced: Readonly<Record<string, number>>): (id: string) => number {
  for (const id of Object.keys(replaced)) assumed(id); // throws on an id that no file holds
  return (id: string) => replaced[id] ?? assumed(id);
}

/** The ids of the numbers of the first shipped plan with this mechanism. */
export function idsOfPlanBy<By extends Measure>(measure: By): PlanNumberIds<By> {
  const isWanted = (plan: PlanEntry): plan is PlanEntry & PlanBy<By> => plan.measure === measure;
  const plan = assumptionSet.plans.find(isWanted);
  if (!plan) throw new Error(`no plan by ${measure}`);
  return plan.numbers;
}
