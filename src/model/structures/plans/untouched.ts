import { at, noElement } from "../../../lists.js";
import { type GrowingSurface, growLayers, grownOnce } from "../../mussels/growth.js";
import { areAlike, bareSurface, type Layer } from "../../mussels/layer.js";
import { isEverDry } from "../../mussels/surface.js";
import type { Component, Plan } from "../component.js";
import type { LakeContext } from "../context.js";

/** A part in one possible operating year of the lake. */
export interface PartYear {
  readonly component: Component;
  readonly context: LakeContext;
}

export type SurfacePart = PartYear & { readonly surface: GrowingSurface };

/** What a part lives through under a plan, month by month since establishment. */
export interface Course {
  /** At each month's end, before any cleaning; as far as years do not repeat. */
  readonly layers: readonly Layer[];
  /** Months of the list at whose end the surface was cleaned. */
  readonly cleanedMonths: ReadonlySet<number>;
  /** The last years of the list, which come again and again from there on; 0 where the list is the whole horizon. */
  readonly cycle: number;
}

/** The course of a surface that nobody touches. */
export interface UntouchedCourse extends Course {
  /** The first month with a layer worth a visit; −1 if there is none within the horizon. */
  readonly firstWorth: number;
}

/** The year of a course's list that a year since establishment is like. */
export function yearLike({ layers, cycle }: Course, year: number): number {
  const known = layers.length / 12;
  return year < known ? year : known - cycle + ((year - known) % cycle);
}

/** Share of settlers under a plan once mussels are regularly found; all of them where that never comes to pass. */
export const settlersLetOn = ({ protection }: Plan, { found }: LakeContext): number =>
  protection && found.ever ? protection.settlementFactor : 1;

/** A surface that nobody touches, with a share of the settlers once mussels are regularly found. */
export function untouchedCourse(factor: number, part: SurfacePart): UntouchedCourse {
  const course = grownUntouched(factor, part);
  const smallest = part.context.assumed("cleaning.smallest-layer");
  return { ...course, firstWorth: course.layers.findIndex(({ thickness }) => thickness >= smallest) };
}

function grownUntouched(factor: number, { surface, context }: SurfacePart): Course {
  const { density, settledMonth, growth } = context;
  const grow = (months: number) =>
    grownOnce(surface.grown, `${months} months untouched, settlers × ${factor}`, months, () =>
      growLayers({ surface, density: densityUnder(factor, context).slice(0, months) }, growth),
    );
  const firstYear = Math.floor(settledMonth / 12) + 2;
  if (isEverDry(surface.months) && (firstYear + 1) * 12 < density.length) {
    const layers = grow((firstYear + 1) * 12);
    const isBare = layers
      .slice(settledMonth, firstYear * 12)
      .some(({ number, killed }) => number === 0 && killed > 0);
    if (isBare) return { layers, cleanedMonths: noMonths, cycle: 1 };
  }
  const layers = grow(density.length);
  const known = yearsToTell(layers, Math.ceil(settledMonth / 12));
  const isRepeated = known < density.length / 12;
  return {
    layers: isRepeated ? layers.slice(0, known * 12) : layers,
    cleanedMonths: noMonths,
    cycle: isRepeated ? 1 : 0,
  };
}

/** Years after which all are alike to the last digit; a year that may count as all later ones is not before `from`. */
function yearsToTell(layers: readonly Layer[], from: number): number {
  let years = layers.length / 12;
  while (years > from + 1 && isLikeYearBefore(layers, years - 1)) years -= 1;
  return years;
}

function isLikeYearBefore(layers: readonly Layer[], year: number): boolean {
  for (let month = year * 12; month < year * 12 + 12; month++) {
    if (!areAlike(at(layers, month), at(layers, month - 12))) return false;
  }
  return true;
}

export const noMonths: ReadonlySet<number> = new Set();

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
export function untouchedLayer({ component, context }: PartYear): Layer {
  const { density, settledMonth, matureDensity } = context;
  const surface = context.growing(component.surface);
  if (density.length >= settledMonth + mature.months && density.at(-1) === matureDensity) {
    const { layers, cycle } = grownUntouched(1, { component, context, surface });
    const from = settledMonth + mature.runUpMonths;
    return thickest(layers, cycle > 0 ? Math.min(from, layers.length - 12 * cycle) : from);
  }
  const { layers: grown, from } = matureMonths(surface, context);
  return thickest(grown, from);
}

/**
 * The months of a surface that nobody touches in a mature infestation, D = max(D1, D2, …), and the first that counts.
 */
export function matureMonths(
  surface: GrowingSurface,
  { growth, matureDensity }: LakeContext,
): { readonly layers: readonly Layer[]; readonly from: number } {
  const layers = grownOnce(surface.grown, "untouched and mature", mature.months, () =>
    growLayers({ surface, density: Array<number>(mature.months).fill(matureDensity) }, growth),
  );
  return { layers, from: mature.runUpMonths };
}

/** The thickest layer of those from a place up to, but without, another. */
export function thickest(layers: readonly Layer[], from = 0, to = layers.length): Layer {
  let best = bareSurface;
  for (let index = from; index < to; index++) {
    const layer = layers[index] ?? noElement(layers, index);
    if (layer.thickness > best.thickness) best = layer;
  }
  return best;
}
