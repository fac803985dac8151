import type { PlanEntry } from "./catalogue.js";

/** Ids of a plan's numbers, `plan.<numbers>.<name>`, in the order of the names; made once for each plan. */
export function planIds(names: readonly string[]): (entry: Pick<PlanEntry, "numbers">) => readonly string[] {
  const known = new Map<string, readonly string[]>();
  return ({ numbers }) => {
    const ids = known.get(numbers) ?? names.map((name) => `plan.${numbers}.${name}`);
    known.set(numbers, ids);
    return ids;
  };
}
