import { at } from "../../../lists.js";
import type { LimitLoad, Plan } from "../component.js";
import { noLoad } from "../limits.js";
import { courseOf, firstVisit } from "./course.js";
import { datesOf, yearsToRepeat } from "./dates.js";
import { weightIn } from "./found.js";
import type { PlanTools } from "./tools.js";
import { type Course, settlersLetOn, type UntouchedCourse, yearLike } from "./untouched.js";
import { type Cost, type PlanWeights, weighed, weighedLines } from "./weights.js";

/**
 * The present value of following a plan in one operating year, V = Σ w(a) C(a) over the years a since establishment, known
 * ever better from below. It is reckoned in steps: what a protection costs while mussels are regularly found, then the
 * dates of the routine, which the untouched surface tells, then what stands and is carted away in the years, those that
 * tell most first.
 */
export class PlanValue {
  readonly plan: Plan;
  readonly #tools: PlanTools;
  #value: number;
  #course: Course | undefined;
  #steps = -1;
  #yearsBefore = 0;
  #nearest = noLoad;

  constructor(plan: Plan, tools: PlanTools) {
    this.plan = plan;
    this.#tools = tools;
    this.#value = protectionValue(plan, Infinity, tools);
    if (plan.protection === undefined) this.#reckonDates();
  }

  /** Present value of what is known of it. */
  get atLeast(): number {
    return this.#value;
  }

  /** The limit that the layer came nearest to in the years reckoned. */
  get nearest(): LimitLoad {
    return this.#nearest;
  }

  get isWhole(): boolean {
    return this.#steps >= 0 && this.#steps >= this.#years();
  }

  /** Grown when first asked for. */
  get course(): Course {
    this.#course ??= courseOf(this.plan, this.#untouched(), this.#tools);
    return this.#course;
  }

  reckonOn(): void {
    if (this.#steps < 0) {
      this.#reckonDates();
      return;
    }
    // As many years again as are known, so that few steps lead to the end.
    const end = Math.min(this.#years(), Math.max(1, 2 * this.#steps));
    for (; this.#steps < end; this.#steps += 1)
      this.#reckonYear(yearAt(this.#steps, this.#years(), this.#tools));
  }

  #years(): number {
    return this.course.months / 12;
  }

  #untouched(): UntouchedCourse {
    return this.#tools.untouched(settlersLetOn(this.plan, this.#tools.context));
  }

  #reckonDates(): void {
    const { plan } = this;
    const work =
      plan.routine.by === "trigger"
        ? triggeredWork(plan, this.course, this.#tools)
        : datedWork(plan, this.#untouched(), this.#tools);
    this.#value = protectionValue(plan, work.first, this.#tools) + work.value;
    this.#yearsBefore = work.yearsBefore;
    this.#steps = 0;
  }

  #reckonYear(year: number): void {
    const { planWeights } = this.#tools.context;
    const isBefore = year < this.#yearsBefore;
    const lived = isBefore ? this.#untouched() : this.course;
    const { cost, nearest } = this.#tools.inYear(isBefore ? yearLike(lived, year) : year, this.plan, lived);
    this.#value += weighed(
      cost,
      isBefore ? at(planWeights.byYear, year) : weightOf(lived, year, planWeights),
    );
    if (nearest.load > this.#nearest.load) this.#nearest = nearest;
  }
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

function triggeredWork({ entry }: Plan, course: Course, { context, workOf }: PlanTools): Work {
  const { cleanedMonths } = course;
  let value = 0;
  for (const month of cleanedMonths) {
    const weight = weightOf(course, Math.floor(month / 12), context.planWeights);
    value += weighed(workOf(entry, month % 12), weight);
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

/** Of a year that a course tells and of all years that are like it. */
function weightOf({ months, cycle }: Course, year: number, { byYear, repeating }: PlanWeights): Cost {
  const isRepeated = cycle > 0 && year >= months / 12 - cycle;
  return at(isRepeated ? repeating(cycle) : byYear, year);
}
