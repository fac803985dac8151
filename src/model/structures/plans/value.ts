import { at } from "../../../lists.js";
import type { LimitLoad, Plan } from "../component.js";
import { noLoad } from "../limits.js";
import { courseOf, firstVisit } from "./course.js";
import { datesOf, yearsToRepeat } from "./dates.js";
import { weightIn } from "./found.js";
import type { PlanTools } from "./tools.js";
import { type Course, settlersLetOn, type UntouchedCourse, yearLike } from "./untouched.js";
import { type Cost, type PlanWeights, weighed, weighedLines } from "./weights.js";

/** One plan followed in one operating year, as far as it has been reckoned: its value is known ever better from below. */
export interface PlanValue {
  readonly plan: Plan;
  /** Present value of what is known of it. */
  readonly atLeast: () => number;
  readonly isWhole: () => boolean;
  readonly reckonOn: () => void;
  readonly course: () => Course;
  /** The limit that the layer came nearest to in the years reckoned. */
  readonly nearest: () => LimitLoad;
}

/**
 * The present value of following a plan, V = Σ w(a) C(a) over the years a since establishment. It is reckoned in steps:
 * what a protection costs while mussels are regularly found, then the dates of the routine, which the untouched
 * surface tells, then what stands and is carted away in the years, those that tell most first.
 */
export function planValue(plan: Plan, tools: PlanTools): PlanValue {
  const { planWeights } = tools.context;
  const untouched = () => tools.untouched(settlersLetOn(plan, tools.context));
  let value = protectionValue(plan, Infinity, tools);
  let known: Course | undefined;
  let steps = -1;
  let yearsBefore = 0;
  let nearest = noLoad;
  const course = () => {
    known ??= courseOf(plan, untouched(), tools);
    return known;
  };
  const reckonDates = () => {
    const work =
      plan.routine.by === "trigger"
        ? triggeredWork(plan, course(), tools)
        : datedWork(plan, untouched(), tools);
    value = protectionValue(plan, work.first, tools) + work.value;
    yearsBefore = work.yearsBefore;
    steps = 0;
  };
  const years = () => course().layers.length / 12;
  const reckonYear = () => {
    const year = yearAt(steps, years(), tools);
    const isBefore = year < yearsBefore;
    const lived = isBefore ? untouched() : course();
    const found = tools.inYear(isBefore ? yearLike(lived, year) : year, plan, lived);
    value += weighed(
      found.cost,
      isBefore ? at(planWeights.byYear, year) : weightOf(lived, year, planWeights),
    );
    if (found.nearest.load > nearest.load) nearest = found.nearest;
    steps += 1;
  };
  if (plan.protection === undefined) reckonDates();
  return {
    plan,
    atLeast: () => value,
    isWhole: () => steps >= 0 && steps >= years(),
    reckonOn: () => {
      if (steps < 0) return reckonDates();
      // As many years again as are known, so that few steps lead to the end.
      const end = Math.min(years(), Math.max(1, 2 * steps));
      while (steps < end) reckonYear();
    },
    course,
    nearest: () => nearest,
  };
}

/**
 * Years in the order in which they tell most: from the first settled one, which may stand for all later ones, to the
 * last, then back to the first.
 */
function yearAt(step: number, years: number, { context: { settledMonth } }: PlanTools): number {
  const settled = Math.min(Math.ceil(settledMonth / 12), years - 1);
  const year = settled + step;
  return year < years ? year : years - 1 - step;
}

/** Work of a plan over the horizon, apart from what is carted away. */
interface Work {
  readonly first: number;
  readonly value: number;
  /** Years before that of the first work: the surface is untouched in them. */
  readonly yearsBefore: number;
}

function datedWork(
  { routine, entry }: Plan,
  untouched: UntouchedCourse,
  { context, workOf }: PlanTools,
): Work {
  const dates = datesOf(routine);
  const first = firstVisit(routine, untouched, context);
  if (dates === undefined || first === undefined) return { first: Infinity, value: 0, yearsBefore: 0 };
  const years = yearsToRepeat(dates);
  const weights = context.planWeights.repeating(years);
  const end = Math.min(first + years * 12, context.density.length);
  let value = 0;
  for (let month = first; month < end; month += dates.every) {
    value += weighed(workOf(entry, month % 12), at(weights, Math.floor(month / 12)));
  }
  return { first, value, yearsBefore: Math.floor(first / 12) };
}

function triggeredWork({ entry }: Plan, { cleanedMonths }: Course, { context, workOf }: PlanTools): Work {
  let value = 0;
  for (const month of cleanedMonths) {
    value += weighed(workOf(entry, month % 12), weightIn(month, context.planWeights));
  }
  return { first: Math.min(...cleanedMonths), value, yearsBefore: 0 };
}

/** What a protection costs while mussels are regularly found, and in other months from its first use on. */
function protectionValue({ protection }: Plan, firstUse: number, { context }: PlanTools): number {
  if (protection === undefined) return 0;
  const { planWeights, found } = context;
  const { monthly } = protection;
  let value = 0;
  monthly.forEach((lines, month) => {
    value += weighedLines(lines, at(found.weights, month), planWeights);
  });
  if (firstUse === Infinity) return value;
  for (const month of found.others) {
    if (month < firstUse) continue;
    value += weighedLines(at(monthly, month % 12), weightIn(month, planWeights), planWeights);
  }
  return value;
}

/** Of a year of a course's list and of all years that are like it. */
function weightOf({ layers, cycle }: Course, year: number, { byYear, repeating }: PlanWeights): Cost {
  const isRepeated = cycle > 0 && year >= layers.length / 12 - cycle;
  return at(isRepeated ? repeating(cycle) : byYear, year);
}
