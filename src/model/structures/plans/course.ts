import { clean } from "../../mussels/cohorts.js";
import { type GrownMonths, grownMonths, layerAt } from "../../mussels/grown-months.js";
import type { Layer } from "../../mussels/layer.js";
import type { Component, Plan, Routine } from "../component.js";
import type { LakeContext } from "../context.js";
import { NearestLimit } from "../limits.js";
import { type Course, courseFrom, monthLike, thicknessIn } from "./course-months.js";
import { type Dates, dateFrom, datesOf, yearsToRepeat } from "./dates.js";
import {
  begun,
  growingPart,
  type PartYear,
  type SurfacePart,
  settlersLetOn,
  thickest,
  type UntouchedCourse,
  untouchedCourse,
} from "./untouched.js";

/**
 * A plan from establishment over the horizon. Cleaning starts on the first date at which there is a layer worth a
 * visit, t ≥ tv; from then on every date is kept, as a routine. Once the lake's density has settled and the surface has been
 * bare on a date, years repeat. What passes through the same months from bare is grown once for all plans.
 * @param untouched the course of the surface under the plan's settlers if nobody touches it
 */
export function courseOf(plan: Plan, untouched: UntouchedCourse, part: SurfacePart): Course {
  const { routine } = plan;
  if (routine.by === "trigger") return triggeredCourse(routine, untouched, part);
  const visits = visitsOf(routine, untouched, part.context);
  if (visits === undefined) return untouched;
  return datedCourse(visits, { factor: settlersLetOn(plan, part.context), untouched }, part);
}

/** The thickest layer that a plan lets grow on a part. */
export function thickestUnder(plan: Plan, part: PartYear): Layer {
  const growing = growingPart(part);
  return thickest(courseOf(plan, untouchedCourse(settlersLetOn(plan, part.context), growing), growing));
}

/** Dates of a routine from the first with a layer worth a visit on; undefined if there is none within the horizon. */
export function visitsOf(
  routine: Routine,
  untouched: UntouchedCourse,
  { assumed, density }: LakeContext,
): Dates | undefined {
  const dates = datesOf(routine);
  if (dates === undefined || untouched.firstWorth < 0) return undefined;
  const { every } = dates;
  const smallest = assumed("cleaning.smallest-layer");
  const start = dateFrom(dates, untouched.firstWorth);
  for (let first = start; first < density.length; first += every) {
    if (thicknessIn(untouched, monthLike(untouched, first)) >= smallest) return { first, every };
  }
  return undefined;
}

function datedCourse(
  { first, every }: Dates,
  { factor, untouched }: { factor: number; untouched: UntouchedCourse },
  part: SurfacePart,
): Course {
  const { density, settledMonth } = part.context;
  const settled = dateFrom({ first, every }, settledMonth);
  const years = yearsToRepeat({ first, every });
  const known = (Math.floor(settled / 12) + 1 + years) * 12;
  const { grown } = untouched;
  const begin = (start: number) => bareRun(start, { every, factor, density: grown.density }, part);
  return {
    months: Math.min(known, density.length),
    cycle: known < density.length ? years : 0,
    grown,
    cleaned: [],
    dated: { first, every, runs: [], begin },
  };
}

/** What grows from bare on until the next date. In a settled lake all years are alike. */
function bareRun(
  start: number,
  { every, factor, density }: { every: number; factor: number; density: readonly number[] },
  { surface, context }: SurfacePart,
): GrownMonths {
  const { settledMonth, growth } = context;
  const when = start >= settledMonth ? settledMonth + (start % 12) : start;
  return begun(surface.grownFromBare(factor), when, () =>
    grownMonths({ surface, density, start }, growth, every),
  );
}

type TriggeredRoutine = Extract<Routine, { by: "trigger" }>;

/**
 * Inspections begin once mussels are regularly found, and with them the cleanings that they lead to. In a settled lake
 * years repeat once one is cleaned in the same month of the year as another before it.
 */
function triggeredCourse(
  routine: TriggeredRoutine,
  untouched: UntouchedCourse,
  { component, context, surface }: SurfacePart,
): Course {
  const { density, growth, found, settledMonth } = context;
  if (!found.ever) return untouched;
  const grown = grownMonths({ surface, density, start: 0 }, growth, density.length);
  const isNear = nearLimit(routine, component, context);
  const cleaned: number[] = [];
  const cleanedLast: number[] = [];
  let months = density.length;
  let cycle = 0;
  for (let month = 0; month < months; month++) {
    if (!found.isFound(month) || !isNear(layerAt(grown, month), month % 12)) continue;
    clean(grown.colony);
    cleaned.push(month);
    const before = cleanedLast[month % 12];
    if (month >= settledMonth) cleanedLast[month % 12] = month;
    if (before === undefined || cycle > 0) continue;
    ({ months, cycle } = repeatedFrom(before, month, density.length));
  }
  return courseFrom(grown, { months, cycle }, cleaned);
}

/** Years to tell where a surface is bare at the end of two months of a settled lake. */
function repeatedFrom(before: number, month: number, all: number): Pick<Course, "months" | "cycle"> {
  const months = (Math.floor(month / 12) + 1) * 12;
  return months < all ? { months, cycle: (month - before) / 12 } : { months: all, cycle: 0 };
}

/** True for a layer that has reached the set share of one that passes a limit. */
export function nearLimit({ limitShare }: TriggeredRoutine, component: Component, context: LakeContext) {
  const share = context.assumed(limitShare);
  const nearest = new NearestLimit();
  return (layer: Layer, monthOfYear: number): boolean => {
    if (layer.mass === 0) return false;
    const { number, lengthMm, cover, mass, thickness, killed, shed } = layer;
    const grown = {
      number,
      lengthMm,
      cover: cover / share,
      mass: mass / share,
      thickness: thickness / share,
      killed,
      shed: shed / share,
    };
    nearest.clear();
    component.limit(nearest.meet, grown, monthOfYear);
    return nearest.load > 1;
  };
}
