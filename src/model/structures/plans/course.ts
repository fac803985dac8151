import { noElement } from "../../../lists.js";
import { growLayers, grownOnce } from "../../mussels/growth.js";
import { bareSurface, type Layer } from "../../mussels/layer.js";
import type { Component, Plan, Routine } from "../component.js";
import type { LakeContext } from "../context.js";
import { nearestLimit } from "../limits.js";
import { type Dates, dateFrom, datesOf, yearsToRepeat } from "./dates.js";
import {
  type Course,
  densityUnder,
  type SurfacePart,
  settlersLetOn,
  type UntouchedCourse,
  yearLike,
} from "./untouched.js";

function layerIn(course: Course, month: number): Layer {
  const place = yearLike(course, Math.floor(month / 12)) * 12 + (month % 12);
  return course.layers[place] ?? noElement(course.layers, place);
}

/**
 * A plan from establishment over the horizon. Cleaning starts on the first date at which there is a layer worth a
 * visit, t ≥ tv; from then on every date is kept, as a routine. Once the lake's density has settled and the surface has been
 * bare on a date, years repeat. What passes through the same months from bare is grown once for all plans.
 * @param untouched the course of the surface under the plan's settlers if nobody touches it
 */
export function courseOf(plan: Plan, untouched: UntouchedCourse, part: SurfacePart): Course {
  const { routine } = plan;
  if (routine.by === "trigger") return triggeredCourse(routine, untouched, part);
  const dates = datesOf(routine);
  const first = firstVisit(routine, untouched, part.context);
  if (dates === undefined || first === undefined) return untouched;
  return datedCourse(dates, { first, factor: settlersLetOn(plan, part.context), untouched }, part);
}

/** The first date of a routine with a layer worth a visit; undefined if there is none within the horizon. */
export function firstVisit(
  routine: Routine,
  untouched: UntouchedCourse,
  { assumed, density }: LakeContext,
): number | undefined {
  const dates = datesOf(routine);
  if (dates === undefined || untouched.firstWorth < 0) return undefined;
  const smallest = assumed("cleaning.smallest-layer");
  const start = dateFrom(dates, untouched.firstWorth);
  for (let month = start; month < density.length; month += dates.every) {
    if (layerIn(untouched, month).thickness >= smallest) return month;
  }
  return undefined;
}

function datedCourse(
  dates: Dates,
  { first, factor, untouched }: { first: number; factor: number; untouched: UntouchedCourse },
  part: SurfacePart,
): Course {
  const { density: whole, settledMonth } = part.context;
  const settled = dateFrom(dates, Math.max(first, settledMonth));
  const years = yearsToRepeat(dates);
  const known = (Math.floor(settled / 12) + 1 + years) * 12;
  const length = Math.min(known, whole.length);
  const density = densityUnder(factor, part.context);
  const cleanedMonths = new Set<number>();
  const layers = Array<Layer>(length).fill(bareSurface);
  for (let month = 0; month <= first; month++) layers[month] = layerIn(untouched, month);
  for (let date = first; date < length; date += dates.every) {
    cleanedMonths.add(date);
    const months = Math.min(dates.every, length - 1 - date);
    const run = bareRun(part, { density, factor, start: date + 1, months });
    for (let month = 0; month < months; month++)
      layers[date + 1 + month] = run[month] ?? noElement(run, month);
  }
  return { layers, cleanedMonths, cycle: known < whole.length ? years : 0 };
}

interface BareRun {
  readonly density: readonly number[];
  readonly factor: number;
  readonly start: number;
  readonly months: number;
}

/** Layers from a bare surface on: at least as many months as asked for. In a settled lake all years are alike. */
function bareRun(
  { surface, context }: SurfacePart,
  { density, factor, start, months }: BareRun,
): readonly Layer[] {
  if (months === 0) return [];
  const isSettled = start >= context.settledMonth;
  const firstMonth = start % 12;
  const densityOf = () =>
    isSettled
      ? Array<number>(months).fill(density[start] ?? noElement(density, start))
      : density.slice(start, start + months);
  const when = isSettled ? context.settledMonth + firstMonth : start;
  return grownOnce(surface.grownFromBare(factor), when, months, () =>
    growLayers({ surface, density: densityOf(), firstMonth }, context.growth),
  );
}

type TriggeredRoutine = Extract<Routine, { by: "trigger" }>;

/** Inspections begin once mussels are regularly found, and with them the cleanings that they lead to. */
function triggeredCourse(
  routine: TriggeredRoutine,
  untouched: UntouchedCourse,
  { component, context, surface }: SurfacePart,
): Course {
  const { density, growth, found } = context;
  if (!found.ever) return untouched;
  const cleanedMonths = new Set<number>();
  const isNear = nearLimit(routine, component, context);
  const cleanAfter = (month: number, layer: Layer) => {
    const isCleaned = found.isFound(month) && isNear(layer, month % 12);
    if (isCleaned) cleanedMonths.add(month);
    return isCleaned;
  };
  return { layers: growLayers({ surface, density, cleanAfter }, growth), cleanedMonths, cycle: 0 };
}

/** True for a layer that has reached the set share of one that passes a limit. */
export function nearLimit({ limitShare }: TriggeredRoutine, component: Component, context: LakeContext) {
  const share = context.assumed(limitShare);
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
    return nearestLimit(component, grown, monthOfYear).load > 1;
  };
}
