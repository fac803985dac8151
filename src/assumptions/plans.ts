import { z } from "zod";
import type { Expected } from "../model/register/expected.js";
import { type Measure, planNumbers } from "../model/register/plan-numbers.js";
import { type PlanEntry, partKinds } from "../model/structures/catalogue.js";
import { earlierNumbers } from "./earlier-plans.js";
import type { HeldIds } from "./written-items.js";

export const plansFile = "protection-plans.yaml";

const monthsInYear = 12;

const measures = Object.keys(planNumbers) as [Measure, ...Measure[]];

const longestInterval = 60;

/** Months after which the same months of the year come again: work is followed through a year, or through whole years. */
const interval = z
  .int()
  .min(0)
  .max(longestInterval)
  .refine(
    (months) => months === 0 || monthsInYear % months === 0 || months % monthsInYear === 0,
    "0, months that divide a year (1, 2, 3, 4, 6, 12), or whole years (24, 36, 48, 60)",
  );

const planSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]+$/, "lower-case words joined by hyphens"),
  name: z.string().min(1),
  measure: z.enum(measures),
  parts: z.array(z.enum(partKinds)).min(1),
  numbers: z.union([z.string(), z.record(z.string(), z.string())]).optional(),
  intervals: z.array(interval).min(1),
  sideEffects: z.string().min(1),
  permits: z.string().min(1),
  cautions: z.string().min(1),
});

type WrittenPlan = z.infer<typeof planSchema>;

/** An assumption that a plan names, with what it is held to. */
export interface NamedNumber extends Expected {
  readonly id: string;
  /** "the life of the plan second-line". */
  readonly as: string;
}

export interface PlanCatalogue {
  readonly plans: readonly PlanEntry[];
  readonly numbers: readonly NamedNumber[];
  /** False where an entry could not be read whole: then nobody knows which numbers no plan names. */
  readonly isWhole: boolean;
}

/** Reads the catalogue of protection plans and adds what is wrong with it to `problems`. */
export function readPlans(content: unknown, ids: HeldIds, problems: string[]): PlanCatalogue {
  const parsed = z.array(planSchema).min(1).safeParse(content);
  if (!parsed.success) {
    problems.push(
      ...parsed.error.issues.map(
        ({ path, message }) =>
          `${plansFile}: entry ${path.map((key) => (typeof key === "number" ? key + 1 : String(key))).join(", ")}: ${message}. Correct it.`,
      ),
    );
    return { plans: [], numbers: [], isWhole: false };
  }
  const seen = new Set<string>();
  for (const { id } of parsed.data) {
    if (seen.has(id)) problems.push(`${plansFile}: ${id} stands here a second time. Keep one of the two.`);
    seen.add(id);
  }
  const read = parsed.data.map((plan) => withNumbers(plan, ids, problems));
  const plans = read.flatMap(({ plan }) => plan ?? []);
  return {
    plans,
    numbers: read.flatMap(({ numbers }) => numbers),
    isWhole: plans.length === read.length,
  };
}

interface ReadPlan {
  /** Absent where it does not name all that its mechanism reads. */
  readonly plan: PlanEntry | undefined;
  readonly numbers: readonly NamedNumber[];
}

function withNumbers(written: WrittenPlan, ids: HeldIds, problems: string[]): ReadPlan {
  const needed: Readonly<Record<string, Expected>> = planNumbers[written.measure];
  const named =
    typeof written.numbers === "object"
      ? written.numbers
      : earlierNumbers(written.numbers ?? written.id, Object.keys(needed), ids.list);
  problems.push(...strangers(written, named, needed));
  const numbers = Object.entries(needed).flatMap(([name, expected]): NamedNumber[] => {
    const id = named[name];
    const words = wordsOf(name);
    if (id !== undefined && ids.has(id)) {
      return [{ id, ...expected, as: `the ${words} of the plan ${written.id}` }];
    }
    if (ids.areAll) {
      problems.push(
        id === undefined
          ? `${plansFile}: ${written.id} names no ${words}; allowed: the id of an assumption in ${expected.unit}. Add ${name} to its numbers.`
          : `${plansFile}: ${written.id} names ${id} as its ${words}, which no file holds. Add it to plans.yaml, in ${expected.unit}.`,
      );
    }
    return [];
  });
  const plan = { ...written, numbers: named };
  return { plan: isWhole(plan) ? plan : undefined, numbers };
}

function strangers(
  { id, measure }: WrittenPlan,
  named: Readonly<Record<string, string>>,
  needed: Readonly<Record<string, Expected>>,
): string[] {
  const allowed = Object.keys(needed).join(", ") || "none";
  return Object.keys(named)
    .filter((name) => !Object.hasOwn(needed, name))
    .map(
      (name) =>
        `${plansFile}: ${id} has the number "${name}"; allowed for the measure ${measure}: ${allowed}. Correct or remove it.`,
    );
}

const wordsOf = (name: string) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

type NamedPlan = Omit<WrittenPlan, "numbers"> & { readonly numbers: Readonly<Record<string, string>> };

/** True where the plan names exactly what its mechanism reads. */
const isWhole = (plan: NamedPlan): plan is NamedPlan & PlanEntry => {
  const needed = Object.keys(planNumbers[plan.measure]);
  return (
    needed.every((name) => Object.hasOwn(plan.numbers, name)) &&
    needed.length === Object.keys(plan.numbers).length
  );
};
