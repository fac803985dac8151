import type { Plan, Routine } from "../component.js";

/** Dates of a routine: the first, counted from the January of the first year, and the months from each to the next. */
export interface Dates {
  readonly first: number;
  readonly every: number;
}

/** Absent where a routine has none of its own. */
export function datesOf(routine: Routine): Dates | undefined {
  switch (routine.by) {
    case "nothing":
    case "trigger":
      return undefined;
    case "interval":
      return { first: routine.months - 1, every: routine.months };
    case "month-of-year":
      return { first: routine.month, every: 12 };
  }
}

/** The first date in a month or after it. */
export const dateFrom = ({ first, every }: Dates, month: number): number =>
  first + Math.max(0, Math.ceil((month - first) / every)) * every;

/** Years after which dates fall into the same months again. */
export function yearsToRepeat({ every }: Dates): number {
  let years = 1;
  while ((years * 12) % every !== 0) years += 1;
  return years;
}

/** Whether all dates of a plan are dates of another one of its entry. */
export function areAmong({ routine: some, entry }: Plan, { routine: others, entry: other }: Plan): boolean {
  if (entry !== other || others.by !== "interval") return false;
  return some.by === "nothing" || (some.by === "interval" && some.months % others.months === 0);
}
