import { counted } from "../../counted.js";
import { daysInYear, monthOfDay } from "../lake/calendar.js";
import { type InstalledPlan, type PlanEntry, planId } from "./catalogue.js";
import type { Component, ImpossiblePlan, Plan, Routine } from "./component.js";
import type { LakeContext } from "./context.js";
import { protectionOf, sizeOf } from "./protection.js";

interface Candidates {
  readonly plans: readonly Plan[];
  readonly impossible: readonly ImpossiblePlan[];
}

/** The plans that the catalogue offers to a part; whether they keep its limits is found by trying them. */
export const candidatePlans = (component: Component, context: LakeContext): Candidates => ({
  plans: possiblePlans(component, context),
  impossible: impossiblePlans(component, context),
});

export function possiblePlans(component: Component, context: LakeContext): Plan[] {
  const plans: Plan[] = [];
  for (const entry of context.plans) {
    if (entry.parts.includes(component.kind) && whyNot(entry, component, context) === undefined)
      plans.push(...plansOf(entry, component, context));
  }
  return plans;
}

export function impossiblePlans(component: Component, context: LakeContext): ImpossiblePlan[] {
  return context.plans.flatMap((entry) => {
    if (!entry.parts.includes(component.kind)) return [];
    const reason = whyNot(entry, component, context);
    return reason === undefined ? [] : [{ id: entry.id, label: entry.name, reason: reason() }];
  });
}

/** In words, once somebody reads them; absent where a plan is possible. */
type Reason = (() => string) | undefined;

const whyNot = (entry: PlanEntry, component: Component, context: LakeContext): Reason =>
  whyNotHere(entry, component, context) ?? outOfSize(entry, component, context);

/** Prices that grow with size are not carried far beyond the size for which they stand. */
function outOfSize(entry: PlanEntry, component: Component, context: LakeContext): Reason {
  if (!isInstalled(entry)) return undefined;
  const ratio = sizeOf(entry, component) / context.installation(entry).referenceSize;
  const reach = context.assumed("plan.size-reach");
  if (ratio * reach >= 1 && ratio <= reach) return undefined;
  return () => {
    const { capital, referenceSize } = entry.numbers;
    const times = ratio < 1 ? ratio.toPrecision(2) : ratio.toPrecision(3);
    return `its size here is ${times} times that for which it is priced, and the price holds up to ${reach} times and down to one in ${reach}; enter a price for this size (${capital}, ${referenceSize})`;
  };
}

const isInstalled = (entry: PlanEntry): entry is InstalledPlan => "capital" in entry.numbers;

function whyNotHere(entry: PlanEntry, component: Component, context: LakeContext): Reason {
  switch (entry.measure) {
    case "dry":
      return dryCleaningMonth(component, context) === undefined
        ? () => noWindow(component, context)
        : undefined;
    case "oxidant-season":
    case "oxidant-end":
    case "chemical-season":
      if (component.oxidant === undefined) return notAllowed;
      return context.spawningMonths.length === 0 ? notWarmEnough : undefined;
    default:
      return undefined;
  }
}

const notAllowed = () => "the study does not allow an oxidant or another chemical here";
const notWarmEnough = () => "no month is warm enough for settlement";

function noWindow(component: Component, context: LakeContext): string {
  const { place } = component.surface;
  if (place.at === "floating") return "it floats and is never exposed";
  const { days } = context.longestDryRun(place);
  if (days >= daysInYear) return "the water never reaches it";
  const needed = context.assumed("cleaning.dry-days-needed");
  return days === 0
    ? "the water never leaves it"
    : `the water leaves it for ${counted(days, "day")}; the work needs ${needed}`;
}

function plansOf(entry: PlanEntry, component: Component, context: LakeContext): Plan[] {
  const protection = protectionOf(entry, component, context);
  return entry.intervals.map((months) => ({
    id: planId(entry, months),
    label: labelOf(entry, months, component),
    entry,
    routine: routineOf(entry, months, component, context),
    protection,
  }));
}

const routineOf = (entry: PlanEntry, months: number, component: Component, context: LakeContext): Routine => {
  switch (entry.measure) {
    case "dry":
      return { by: "month-of-year", month: dryCleaningMonth(component, context) ?? 0 };
    case "oxidant-season":
    case "chemical-season":
      return { by: "month-of-year", month: 11 };
    case "oxidant-end":
      return { by: "month-of-year", month: context.spawningMonths.at(-1) ?? 11 };
    case "trigger":
      return { by: "trigger", limitShare: entry.numbers.limitShare };
    default:
      return months === 0 ? { by: "nothing" } : { by: "interval", months };
  }
};

function labelOf(entry: PlanEntry, months: number, component: Component): string {
  if (months === 0) return entry.name;
  const every = months === 1 ? "every month" : `every ${months} months`;
  switch (entry.measure) {
    case "clean":
      return `${component.cleaning.byName} ${every}`;
    case "coating":
    case "filter":
      return `${entry.name}, cleaned ${every}`;
    default:
      return `${entry.name} ${every}`;
  }
}

/** The month in the middle of the longest dry run, if the run is long enough to work in. */
function dryCleaningMonth(component: Component, context: LakeContext): number | undefined {
  const run = context.longestDryRun(component.surface.place);
  const needed = context.assumed("cleaning.dry-days-needed");
  if (run.days < needed || run.days >= daysInYear) return undefined;
  return monthOfDay(run.startDay + Math.floor(run.days / 2));
}
