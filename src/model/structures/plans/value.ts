import { at, noElement } from "../../../lists.js";
import { remembered } from "../../computed-once.js";
import type { LimitLoad, Plan, Protection } from "../component.js";
import type { LakeContext } from "../context.js";
import { noLoad } from "../limits.js";
import { courseOf, visitsOf } from "./course.js";
import { type Course, firstCleaned, yearLike } from "./course-months.js";
import { yearsToRepeat } from "./dates.js";
import { weightIn } from "./found.js";
import type { PlanTools } from "./tools.js";
import { settlersLetOn, type UntouchedCourse } from "./untouched.js";
import { type Cost, costOfLines, type PlanWeights, weighed } from "./weights.js";

/**
 * The present value of following a plan in one operating year, V = Σ w(a) C(a) over the years a since establishment, known
 * ever better from below. It is reckoned in steps: what a protection costs while mussels are regularly found, then the
 * dates of the routine, which the untouched surface tells, then what stands and is carted away in the years, those that
 * tell most first.
 */
export class PlanValue {
  readonly plan: Plan;
  readonly #tools: PlanTools;
  readonly #standing: StandingCost | undefined;
  #value: number;
  #dated: number;
  #course: Course | undefined;
  #steps = -1;
  #yearsBefore = 0;
  #isWorkless = false;
  #nearest = noLoad;

  constructor(plan: Plan, tools: PlanTools, standing: StandingCost | undefined) {
    this.plan = plan;
    this.#tools = tools;
    this.#standing = standing;
    this.#value = standing?.whileFound ?? 0;
    this.#dated = this.#value;
    if (standing === undefined) this.#reckonDates();
  }

  /** Present value of what is known of it. */
  get atLeast(): number {
    return this.#value;
  }

  /** What is known of it but for the years: its protection and, once they are reckoned, its dates. */
  get dated(): number {
    return this.#dated;
  }

  /** The limit that the layer came nearest to in the years reckoned. */
  get nearest(): LimitLoad {
    return this.#nearest;
  }

  /** Known to be leaving the part: nothing is put in place, and no date of a routine meets a layer worth a visit. */
  get isLeft(): boolean {
    return this.#standing === undefined && this.#isWorkless;
  }

  get isWhole(): boolean {
    return this.#course !== undefined && this.#steps >= this.#course.months / 12;
  }

  /** Grown when first asked for. */
  get course(): Course {
    this.#course ??= courseOf(this.plan, this.#untouched(), this.#tools);
    return this.#course;
  }

  /** Takes a step: the dates, or one year. */
  reckonOn(): void {
    if (this.#steps < 0) {
      this.#reckonDates();
      return;
    }
    this.#reckonYear(yearAt(this.#steps, this.course, this.#tools.context));
    this.#steps += 1;
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
    if (this.#standing) this.#value += valueNotFound(this.#standing, work.first, this.#tools.context);
    this.#value += work.value;
    this.#dated = this.#value;
    this.#yearsBefore = work.yearsBefore;
    this.#isWorkless = work.first === Infinity;
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
 * Values of the plans of a part in one operating year, each made once: one for all plans without protection by which nothing
 * is ever done.
 */
export function planValues(tools: PlanTools): (plan: Plan) => PlanValue {
  const standing = remembered((protection: Protection) => standingCost(protection, tools.context));
  let left: PlanValue | undefined;
  return remembered((plan: Plan) => {
    const value = new PlanValue(plan, tools, plan.protection && standing(plan.protection));
    if (!value.isLeft) return value;
    left ??= value;
    return left;
  });
}

/**
 * Years of a course's list in the order in which they tell most: those that come again and again, then back from there to
 * the first; where none repeats, back from the first settled one, then those after it.
 */
function yearAt(step: number, { months, cycle }: Course, { settledMonth }: LakeContext): number {
  const years = months / 12;
  if (step < cycle) return years - cycle + step;
  const before = cycle > 0 ? years - cycle : Math.min(Math.ceil(settledMonth / 12) + 1, years);
  return step < cycle + before ? cycle + before - 1 - step : step;
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
  const visits = visitsOf(routine, untouched, context);
  if (visits === undefined) return { first: Infinity, value: 0, yearsBefore: 0 };
  const { first, every } = visits;
  const years = yearsToRepeat(visits);
  const weights = context.planWeights.repeating(years);
  const end = Math.min(first + years * 12, context.density.length);
  let value = 0;
  for (let month = first; month < end; month += every) {
    const year = Math.floor(month / 12);
    value += weighed(workOf(entry, month % 12), weights[year] ?? noElement(weights, year));
  }
  return { first, value, yearsBefore: Math.floor(first / 12) };
}

function triggeredWork({ entry }: Plan, course: Course, { context, workOf }: PlanTools): Work {
  let value = 0;
  for (const month of course.cleaned) {
    const weight = weightOf(course, Math.floor(month / 12), context.planWeights);
    value += weighed(workOf(entry, month % 12), weight);
  }
  return { first: firstCleaned(course), value, yearsBefore: 0 };
}

/** What a protection costs, the same for all plans of its entry. */
interface StandingCost {
  readonly byMonth: readonly Cost[];
  /** Present value over all months in which mussels are regularly found. */
  readonly whileFound: number;
}

function standingCost({ monthly }: Protection, { planWeights, found }: LakeContext): StandingCost {
  const byMonth: Cost[] = [];
  let whileFound = 0;
  for (let month = 0; month < monthly.length; month++) {
    const isSame = monthly[month] === monthly[month - 1];
    const cost = isSame ? at(byMonth, month - 1) : costOfLines(at(monthly, month), planWeights);
    byMonth.push(cost);
    whileFound += weighed(cost, at(found.weights, month));
  }
  return { byMonth, whileFound };
}

/** In months in which mussels are not regularly found, from the first use on. */
function valueNotFound(
  { byMonth }: StandingCost,
  firstUse: number,
  { planWeights, found }: LakeContext,
): number {
  let value = 0;
  for (const month of found.others) {
    if (month >= firstUse) value += weighed(at(byMonth, month % 12), weightIn(month, planWeights));
  }
  return value;
}

/** Of a year that a course tells and of all years that are like it. */
function weightOf({ months, cycle }: Course, year: number, { byYear, repeating }: PlanWeights): Cost {
  const isRepeated = year >= months / 12 - cycle;
  const weights = isRepeated ? repeating(cycle) : byYear;
  return weights[year] ?? noElement(weights, year);
}
