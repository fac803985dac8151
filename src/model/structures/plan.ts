import { daysInYear, monthOfDay } from "../lake/calendar.js";
import type { Component } from "./component.js";
import type { LakeContext } from "./context.js";

/** One way of keeping a component in service. */
export interface Plan {
  readonly label: string;
  readonly method: "leave" | "divers" | "dry" | "oxidant";
  /** Months between dates at which the surface is bare again; absent when it never is. */
  readonly intervalMonths?: number;
  /** Is the surface made bare at the end of this month, counted from establishment in a January? */
  readonly isCleaningDate: (month: number) => boolean;
}

/**
 * Intervals that a work calendar offers; each divides a year or is whole years, so that plans repeat. Longest
 * first: of plans that cost the same, the one with the least work is taken.
 */
const intervals = [60, 48, 36, 24, 12, 6, 4, 3, 2, 1] as const;

/** The plans that are possible for a component; whether they keep its limits is found by trying them. */
export function candidatePlans(component: Component, context: LakeContext): Plan[] {
  const dryMonth = dryCleaningMonth(component, context);
  return [
    { label: "left as it is", method: "leave", isCleaningDate: () => false },
    ...(dryMonth === undefined ? [] : [dryPlan(dryMonth)]),
    ...(component.oxidant ? [oxidantPlan] : []),
    ...intervals.map((months) => everyMonths(months, component.cleaning.byName)),
  ];
}

/** Continuous dosing kills what settles in a season, so that the surface is bare at the year's end. */
const oxidantPlan: Plan = {
  label: "oxidant dosed through the season",
  method: "oxidant",
  intervalMonths: 12,
  isCleaningDate: (month) => month % 12 === 11,
};

function everyMonths(months: number, byName: string): Plan {
  const text = months === 1 ? "every month" : `every ${months} months`;
  return {
    label: `${byName} ${text}`,
    method: "divers",
    intervalMonths: months,
    isCleaningDate: (month) => (month + 1) % months === 0,
  };
}

function dryPlan(monthOfYear: number): Plan {
  return {
    label: "cleaned in the dry at low water, every year",
    method: "dry",
    intervalMonths: 12,
    isCleaningDate: (month) => month % 12 === monthOfYear,
  };
}

/** The month in the middle of the longest dry run, if the run is long enough to work in. */
function dryCleaningMonth(component: Component, context: LakeContext): number | undefined {
  const run = context.longestDryRun(component.surface.place);
  const needed = context.assumed("cleaning.dry-days-needed");
  if (run.days < needed || run.days >= daysInYear) return undefined;
  return monthOfDay(run.startDay + Math.floor(run.days / 2));
}
