import { at, noElement } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { type Cohorts, type Colony, passMonth, settle, shed } from "./cohorts.js";
import type { DryingParameters } from "./drying.js";
import { type Layer, layerKeeper } from "./layer.js";
import type { ShellParameters } from "./shell.js";
import { type ShellTable, settlersPlace } from "./shell-table.js";
import { isEverDry, type SurfaceMonth } from "./surface.js";

export interface GrowthParameters {
  /** Settlers a month that live to be counted, in the season, at capacity on a bare surface, 1/m². */
  readonly settlersPerMonth: number;
  readonly yearlyMortality: number;
  /** Largest cover; crowding sheds what is beyond it. */
  readonly coverLimit: number;
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

/** The twelve months of a surface with what a mussel is at each age there: made once, used by every plan. */
export interface GrowingSurface {
  readonly months: readonly SurfaceMonth[];
  /** Made when first needed: a band of a ramp that never dries needs none. */
  readonly table: ShellTable;
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
  readonly surface: Pick<GrowingSurface, "months" | "table">;
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
  input: GrowthInput & { readonly cleanAfter?: (month: number, layer: Layer) => boolean },
  parameters: GrowthParameters,
): Layer[] {
  const layers: Layer[] = [];
  const keep = layerKeeper(input.density.length, parameters.bulkDensity);
  growColonies(input, parameters, (colony, month) => {
    const layer = keep(colony);
    layers.push(layer);
    return input.cleanAfter?.(month, layer) ?? false;
  });
  return layers;
}

/**
 * Live mass that drying and frost kill on an untouched surface in each year, kg/m². Once the density has settled and
 * a dry run has left nothing alive, years repeat.
 * @param input.settled first month from which the density no longer changes
 */
export function killedByYear(
  input: GrowthInput & { readonly settled: number },
  parameters: GrowthParameters,
): number[] {
  const { surface, density, settled } = input;
  const years = density.length / 12;
  if (!isEverDry(surface.months)) return Array<number>(years).fill(0);
  const tried = Math.min(years, Math.ceil(settled / 12) + 2);
  const { killed, bareMonth } = killedIn(
    { ...input, density: density.slice(0, tried * 12) },
    parameters,
    settled,
  );
  if (tried === years) return killed;
  return bareMonth !== undefined && bareMonth < (tried - 1) * 12
    ? [...killed, ...Array<number>(years - tried).fill(at(killed, tried - 1))]
    : killedIn(input, parameters, settled).killed;
}

function killedIn(input: GrowthInput, parameters: GrowthParameters, settled: number) {
  const killed: number[] = [];
  let bareMonth: number | undefined;
  growColonies(input, parameters, (colony, month) => {
    const year = Math.floor(month / 12);
    killed[year] = (killed[year] ?? 0) + colony.killed;
    if (colony.number === 0 && colony.killed > 0 && month >= settled) bareMonth ??= month;
    return false;
  });
  return { killed, bareMonth };
}

/** The months told at `growLayers`; the surface is cleaned if `see`, which is shown what stands, says so. */
export function growColonies(
  { surface, density, firstMonth = 0 }: GrowthInput,
  parameters: GrowthParameters,
  see: (colony: Readonly<Colony>, month: number, cohorts: Readonly<Cohorts>) => boolean,
): void {
  const { months, table } = surface;
  const monthlySurvival = Math.exp(-parameters.yearlyMortality / 12);
  const cohorts: Cohorts = {
    number: new Float64Array(density.length),
    place: new Int32Array(density.length),
    count: 0,
  };
  const colony: Colony = { number: 0, cover: 0, mass: 0, killed: 0, shed: 0 };
  for (let month = 0; month < density.length; month++) {
    const monthOfYear = (firstMonth + month) % 12;
    passMonth(cohorts, colony, table, monthlySurvival);
    colony.shed = colony.mass > 0 ? colony.mass * (1 / monthlySurvival - 1) : 0;
    const overCrowded = colony.cover / parameters.coverLimit;
    const { settlement } = months[monthOfYear] ?? noElement(months, monthOfYear);
    const settlers =
      parameters.settlersPerMonth *
      (density[month] ?? noElement(density, month)) *
      settlement *
      Math.max(0, 1 - overCrowded);
    settle(cohorts, colony, table, settlers, settlersPlace(monthOfYear));
    if (overCrowded > 1) {
      colony.shed += colony.mass * (1 - 1 / overCrowded);
      shed(cohorts, colony, 1 / overCrowded);
    }
    if (see(colony, month, cohorts)) cohorts.count = 0;
  }
}
