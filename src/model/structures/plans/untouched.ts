import type { GrowingSurface } from "../../mussels/growing-surfaces.js";
import { type GrownMonths, grownMonths, isBaredIn, isLikeYearBefore } from "../../mussels/grown-months.js";
import { bareSurface, type Layer } from "../../mussels/layer.js";
import type { Component, Plan } from "../component.js";
import type { LakeContext } from "../context.js";
import { type Course, courseFrom, layerIn, thicknessIn, yearLike } from "./course-months.js";

/** A part in one possible operating year of the lake. */
export interface PartYear {
  readonly component: Component;
  readonly context: LakeContext;
}

export type SurfacePart = PartYear & { readonly surface: GrowingSurface };

/** A part in each possible operating year. */
export type PartYears = readonly [PartYear, ...PartYear[]];
export type GrowingYears = readonly [SurfacePart, ...SurfacePart[]];

export const growingYears = ([first, ...others]: PartYears): GrowingYears => [
  growingPart(first),
  ...others.map(growingPart),
];

export const growingPart = ({ component, context }: PartYear): SurfacePart => ({
  component,
  context,
  surface: context.growing(component.surface),
});

/** The course of a surface that nobody touches. */
export interface UntouchedCourse extends Course {
  /** The first month with a layer worth a visit; −1 if there is none within the horizon. */
  readonly firstWorth: number;
}

/** Share of settlers under a plan once mussels are regularly found; all of them where that never comes to pass. */
export const settlersLetOn = ({ protection }: Plan, { found }: LakeContext): number =>
  protection && found.ever ? protection.settlementFactor : 1;

/** A surface that nobody touches, with a share of the settlers once mussels are regularly found. */
export function untouchedCourse(factor: number, part: SurfacePart): UntouchedCourse {
  const course = grownUntouched(factor, part);
  const smallest = part.context.assumed("cleaning.smallest-layer");
  let firstWorth = 0;
  while (firstWorth < course.months && thicknessIn(course, firstWorth) < smallest) firstWorth += 1;
  return { firstWorth: firstWorth < course.months ? firstWorth : -1, ...course };
}

/**
 * Years are told as far as they are not alike to the last digit: those of ground that dries bare, and those of a surface
 * on which nothing grows. Others are grown as far as somebody asks: to look for years alike costs as much as it spares.
 */
function grownUntouched(factor: number, { surface, context }: SurfacePart): Course {
  const { density, settledMonth, matureDensity } = context;
  const grown = begun(surface.grownFromBare(factor), 0, () =>
    grownMonths(
      { surface, density: densityUnder(factor, context), start: 0 },
      context.growth,
      density.length,
    ),
  );
  const years = density.length / 12;
  const known =
    matureDensity === 0 || surface.months.every(({ settlement }) => settlement === 0)
      ? Math.min(years, firstLikeBefore(settledMonth))
      : yearsToTell(grown, years, settledMonth);
  return courseFrom(grown, { months: known * 12, cycle: known < years ? 1 : 0 });
}

/** The first year that may count as all later ones, after one in which the density has settled. */
const firstLikeBefore = (settledMonth: number) => Math.ceil(settledMonth / 12) + 1;

/** Years after which all are alike. */
function yearsToTell(grown: GrownMonths, all: number, settledMonth: number): number {
  if (!grown.colony.table.isEverDry) return all;
  const firstYear = Math.floor(settledMonth / 12) + 2;
  if (firstYear + 1 < all) {
    for (let month = settledMonth; month < firstYear * 12; month++)
      if (isBaredIn(grown, month)) return firstYear + 1;
  }
  let years = all;
  while (years > firstLikeBefore(settledMonth) && isLikeYearBefore(grown, years - 1)) years -= 1;
  return years;
}

/** Whether the layer reaches a thickness, in m, in a year since establishment. */
export function isThickIn(course: Course, year: number, thickness: number): boolean {
  const from = yearLike(course, year) * 12;
  for (let month = from; month < from + 12; month++) if (thicknessIn(course, month) >= thickness) return true;
  return false;
}

/** What was begun in a month before, or is begun now. */
export function begun(known: Map<number, GrownMonths>, start: number, begin: () => GrownMonths): GrownMonths {
  const before = known.get(start);
  if (before !== undefined) return before;
  const made = begin();
  known.set(start, made);
  return made;
}

/** Density by month, with a protection's share of settlers while mussels are regularly found. */
export function densityUnder(factor: number, { density, found }: LakeContext): readonly number[] {
  if (factor === 1) return density;
  return density.map((share, month) => (found.isFound(month) ? share * factor : share));
}

/**
 * A surface that nobody touches swings for years between crowding and new settlement before it settles: what it
 * carries in a mature infestation is told over seven years after a run-up of three.
 */
const mature = { runUpMonths: 36, months: 36 + 84 };

/**
 * The thickest layer of a surface that nobody touches in a mature infestation: within the horizon, where that is long
 * enough and the lake is as dense then as it ever is.
 */
export function untouchedLayer(part: PartYear): Layer {
  const { context } = part;
  const { density, settledMonth, matureDensity } = context;
  const growing = growingPart(part);
  if (density.length >= settledMonth + mature.months && density.at(-1) === matureDensity) {
    const course = grownUntouched(1, growing);
    const from = settledMonth + mature.runUpMonths;
    return thickest(course, course.cycle > 0 ? Math.min(from, course.months - 12 * course.cycle) : from);
  }
  const { course, from } = matureCourse(growing.surface, context);
  return thickest(course, from);
}

/**
 * The months of a surface that nobody touches in a mature infestation, D = max(D1, D2, …), and the first that counts.
 */
export function matureCourse(
  surface: GrowingSurface,
  { growth, matureDensity }: LakeContext,
): { readonly course: Course; readonly from: number } {
  const { months, runUpMonths } = mature;
  const grown = begun(surface.grownFromBare("mature"), 0, () =>
    grownMonths({ surface, density: [matureDensity], start: 0 }, growth, months),
  );
  return { course: courseFrom(grown, { months, cycle: 0 }), from: runUpMonths };
}

/** The thickest layer of a course in the months from one up to, but without, another. */
export function thickest(course: Course, from = 0, to = course.months): Layer {
  let best = -1;
  let most = 0;
  for (let month = from; month < to; month++) {
    const thickness = thicknessIn(course, month);
    if (thickness <= most) continue;
    best = month;
    most = thickness;
  }
  return best < 0 ? bareSurface : layerIn(course, best);
}
