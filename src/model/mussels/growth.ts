import { at, noElement } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import {
  bareColony,
  type ColonyParameters,
  type ColonySurface,
  clean,
  isBared,
  passMonth,
} from "./cohorts.js";
import type { DryingParameters } from "./drying.js";
import { type Layer, layerKeeper } from "./layer.js";
import type { ShellParameters } from "./shell.js";
import { isEverDry } from "./surface.js";

export interface GrowthParameters extends ColonyParameters {
  readonly bulkDensity: number;
  readonly shell: ShellParameters;
  readonly drying: DryingParameters;
}

/** @param suitability weight of the lake's water, 0 to 1 */
export function growthParameters(
  assumed: Assumed,
  { shell, drying, suitability }: Pick<GrowthParameters, "shell" | "drying"> & { suitability: number },
): GrowthParameters {
  return {
    settlersPerMonth: assumed("growth.settlers-per-month"),
    yearlyMortality: yearlyMortality(suitability, assumed),
    coverLimit: assumed("growth.cover-limit"),
    bulkDensity: assumed("growth.bulk-density"),
    shell,
    drying,
  };
}

/**
 * Deaths over the living in a year, 1/yr: mussels live shorter the less the water suits them, m = m1 w^(−x); none
 * lives where it does not suit them at all. Usual mortality: Karatayev and others 2006; exponent after Davis and others
 * 2015.
 */
export function yearlyMortality(suitability: number, assumed: Assumed): number {
  const weight = Math.max(suitability, Number.EPSILON);
  return assumed("growth.yearly-mortality") * weight ** -assumed("growth.mortality-exponent");
}

/** A surface made once and used by every plan. */
export interface GrowingSurface extends ColonySurface {
  /** What was grown on it before, by a name for the density: alike parts share it. */
  readonly grown: Map<string, readonly Layer[]>;
  /** The same from bare on under a share of the settlers, by when it starts. */
  readonly grownFromBare: (factor: number) => Map<number, readonly Layer[]>;
}

/** What is known under a name, or grown now and kept. @param months that are needed: with fewer it is grown anew */
export function grownOnce<Name>(
  grown: Map<Name, readonly Layer[]>,
  name: Name,
  months: number,
  grow: () => readonly Layer[],
): readonly Layer[] {
  const known = grown.get(name);
  if (known && known.length >= months) return known;
  const made = grow();
  grown.set(name, made);
  return made;
}

interface GrowthInput {
  readonly surface: ColonySurface;
  /** Lake-wide density over capacity times suitability, one value per month. */
  readonly density: readonly number[];
  /** Month of the year, 0 to 11, of the first value; January if left out. */
  readonly firstMonth?: number;
}

/**
 * Grows the layer on a surface month by month from a bare start.
 * Each month: the dry run kills, the living age and grow, N exp(−m/12) of them live on; new settlers take their
 * share of the free space, n D s max(0, 1 − c/cmax); crowding sheds what has no room, so that c = Σ N L² stays
 * within cmax; then the surface is cleaned if the month is a cleaning month. Yearly mortality: Karatayev and others
 * 2006; settlers: after densities in `cwcb-133969`.
 * @param input.cleanAfter true for a month at whose end the surface is cleaned
 * @returns the layer at each month's end, before any cleaning
 */
export function growLayers(
  {
    surface,
    density,
    firstMonth = 0,
    cleanAfter,
  }: GrowthInput & { readonly cleanAfter?: (month: number, layer: Layer) => boolean },
  parameters: GrowthParameters,
): Layer[] {
  const layers: Layer[] = [];
  const keep = layerKeeper(density.length, parameters.bulkDensity);
  const colony = bareColony(surface, parameters, density.length);
  for (let month = 0; month < density.length; month++) {
    passMonth(colony, (firstMonth + month) % 12, density[month] ?? noElement(density, month));
    const layer = keep(colony);
    layers.push(layer);
    if (cleanAfter?.(month, layer)) clean(colony);
  }
  return layers;
}

/**
 * Live mass that drying and frost kill on an untouched surface in each year, kg/m². Once the density has settled and
 * a dry run has left nothing alive, years repeat.
 * @param input.settled first month from which the density no longer changes
 */
export function killedByYear(
  { surface, density, settled }: Omit<GrowthInput, "firstMonth"> & { readonly settled: number },
  parameters: GrowthParameters,
): number[] {
  const years = density.length / 12;
  const killed = Array<number>(years).fill(0);
  if (!isEverDry(surface.months)) return killed;
  const colony = bareColony(surface, parameters, density.length);
  const tried = Math.ceil(settled / 12) + 2;
  let isRepeated = false;
  for (let month = 0; month < density.length; month++) {
    const year = Math.floor(month / 12);
    if (year === tried && isRepeated) return killed.fill(at(killed, year - 1), year);
    passMonth(colony, month % 12, density[month] ?? noElement(density, month));
    killed[year] = at(killed, year) + colony.killed;
    if (month >= settled && year < tried - 1 && isBared(colony)) isRepeated = true;
  }
  return killed;
}
