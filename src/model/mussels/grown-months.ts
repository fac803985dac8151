import { noElement } from "../../lists.js";
import { bareColony, type Colony, type ColonySurface, passMonth } from "./cohorts.js";
import type { GrowthParameters } from "./growth.js";
import { areAlike, isBareKept, keepSums, layerKept, massKept, sumsKept } from "./kept-sums.js";
import { type Layer, layerThickness } from "./layer.js";

/** What grows on a surface from bare on. */
interface BareStart {
  readonly surface: ColonySurface;
  /** Lake-wide density over capacity times suitability, by month since establishment; the last goes on for ever. */
  readonly density: readonly number[];
  /** Month since establishment of the first that is grown. */
  readonly start: number;
}

/** The months of a square metre from bare on: as many are grown as anybody asks for, and what is kept of them stands in columns. */
export interface GrownMonths {
  readonly colony: Colony;
  readonly density: readonly number[];
  readonly start: number;
  readonly parameters: GrowthParameters;
  /** The cohorts, at most one for each month for which there is room, and then what is kept of those months. */
  block: Float64Array;
  room: number;
  /** Months that are grown. */
  count: number;
}

/** @param room months that are likely to be asked for */
export function grownMonths(
  { surface, density, start }: BareStart,
  parameters: GrowthParameters,
  room: number,
): GrownMonths {
  const block = parameters.room(room * (1 + sumsKept));
  return {
    colony: bareColony(surface, parameters, block),
    density,
    start,
    parameters,
    block,
    room,
    count: 0,
  };
}

/**
 * Grows a surface month by month, as far as a number of months from its bare start.
 * Each month: the dry run kills, the living age and grow, N exp(−m/12) of them live on; new settlers take their
 * share of the free space, n D s max(0, 1 − c/cmax); crowding sheds what has no room, so that c = Σ N L² stays
 * within cmax. Yearly mortality: Karatayev and others 2006; settlers: after densities in `cwcb-133969`.
 */
export function growTo(grown: GrownMonths, months: number): void {
  if (months > grown.room) makeRoom(grown, Math.max(months, 2 * grown.room));
  const { colony, density, start, block, room } = grown;
  for (let month = grown.count; month < months; month++) {
    const since = Math.min(start + month, density.length - 1);
    passMonth(colony, (start + month) % 12, density[since] ?? noElement(density, since));
    keepSums(block, room + month * sumsKept, colony);
  }
  grown.count = Math.max(grown.count, months);
}

function makeRoom(grown: GrownMonths, room: number): void {
  const block = grown.parameters.room(room * (1 + sumsKept));
  block.set(grown.block.subarray(0, grown.colony.end));
  block.set(grown.block.subarray(grown.room), room);
  grown.colony.living = block;
  grown.block = block;
  grown.room = room;
}

/** Where the sums of a month stand, once it is grown. */
function placeOf(grown: GrownMonths, month: number): number {
  if (month >= grown.count) growTo(grown, month + 1);
  return grown.room + month * sumsKept;
}

/** The layer at a month's end, before any cleaning. */
export function layerAt(grown: GrownMonths, month: number): Layer {
  const place = placeOf(grown, month);
  return layerKept(grown.block, place, grown.parameters);
}

/** Thickness of that layer, m. */
export function thicknessAt(grown: GrownMonths, month: number): number {
  const place = placeOf(grown, month);
  return layerThickness(massKept(grown.block, place), grown.parameters.bulkDensity);
}

/** Whether the month's drying or frost left nobody alive. */
export function isBaredIn(grown: GrownMonths, month: number): boolean {
  const place = placeOf(grown, month);
  return isBareKept(grown.block, place);
}

/** True where nothing that is kept of a year, counted from the start, differs from the year before. */
export function isLikeYearBefore(grown: GrownMonths, year: number): boolean {
  growTo(grown, (year + 1) * 12);
  for (let month = year * 12; month < year * 12 + 12; month++) {
    if (!areAlike(grown.block, placeOf(grown, month), placeOf(grown, month - 12))) return false;
  }
  return true;
}
