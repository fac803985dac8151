import { z } from "zod";
import type { Measure, PlanEntry } from "../model/structures/catalogue.js";
import { type Assumption, planSchema } from "./entry.js";

export const plansFile = "protection-plans.yaml";

const installation = ["capital", "reference-size", "size-exponent", "life", "upkeep", "outage-days"];

/** The numbers that the model reads of an entry, by its measure. */
const numbersOf: Record<Measure, readonly string[]> = {
  leave: [],
  clean: [],
  dry: [],
  trigger: ["inspection", "limit-share"],
  coating: [...installation, "settlement-factor", "cleaning-share"],
  "oxidant-season": installation,
  "oxidant-end": installation,
  filter: [...installation, "settlement-factor"],
  heat: [...installation, "temperature", "hours", "energy-price", "visit"],
  "second-line": [...installation, "switching-hours"],
};

/** Reads the catalogue of protection plans and adds what is wrong with it to `problems`. */
export function readPlans(
  content: unknown,
  entries: ReadonlyMap<string, Assumption>,
  problems: string[],
): PlanEntry[] {
  const parsed = z.array(planSchema).min(1).safeParse(content);
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map(
        ({ path, message }) =>
          `${plansFile}: entry ${path.map((key) => (typeof key === "number" ? key + 1 : String(key))).join(", ")}: ${message}. Correct it.`,
      ),
    );
    return [];
  }
  const seen = new Set<string>();
  for (const { id, measure, numbers } of parsed.data) {
    if (seen.has(id)) problems.push(`${plansFile}: ${id} stands here a second time. Keep one of the two.`);
    seen.add(id);
    for (const name of numbersOf[measure]) {
      const key = `plan.${numbers}.${name}`;
      if (!entries.has(key)) {
        problems.push(
          `${plansFile}: ${id} needs the assumption ${key}, which no file holds. Add it to plans.yaml.`,
        );
      }
    }
  }
  return parsed.data;
}
