import type { Assumed } from "../assumed.js";
import { at } from "../lake/calendar.js";
import type { DryingParameters } from "./drying.js";
import { settledMonth } from "./population.js";
import type { ShellParameters } from "./shell.js";
import { nextPlace, type ShellTable, settlersPlace } from "./shell-table.js";
import type { SurfaceMonth } from "./surface.js";

/** What stands on a surface at the end of a month. */
export interface Layer {
  /** Live mussels, 1/m². */
  readonly number: number;
  /** Root mean square shell length, mm: the one for which number × length² is the cover. */
  readonly lengthMm: number;
  /** Number × length², a pure number; 1 is about a closed single layer. */
  readonly cover: number;
  /** Live wet mass, kg/m². */
  readonly mass: number;
  readonly thickness: number;
  /** Wet mass killed by drying or frost in the month, kg/m². */
  readonly killed: number;
}

export const bareSurface: Layer = { number: 0, lengthMm: 0, cover: 0, mass: 0, thickness: 0, killed: 0 };

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

export function growthParameters(
  assumed: Assumed,
  shell: ShellParameters,
  drying: DryingParameters,
): GrowthParameters {
  return {
    settlersPerMonth: assumed("growth.settlers-per-month"),
    yearlyMortality: assumed("growth.yearly-mortality"),
    coverLimit: assumed("growth.cover-limit"),
    bulkDensity: assumed("growth.bulk-density"),
    shell,
    drying,
  };
}

/** The twelve months of a surface with what a mussel is at each age there: made once, used by every plan. */
export interface GrowingSurface {
  readonly months: readonly SurfaceMonth[];
  readonly table: ShellTable;
  /** What was grown on it before, by a name for the density and the cleaning: alike parts share it. */
  readonly grown: Map<string, Grown>;
}

export interface Grown {
  readonly layers: readonly Layer[];
  /** Months at whose end the surface was cleaned. */
  readonly cleanedMonths: ReadonlySet<number>;
}

/** What is known under a name, or grown now and kept. @param isEnough false for what must be grown anew */
export function grownOnce(
  { grown }: GrowingSurface,
  name: string,
  grow: () => Grown,
  isEnough: (known: Grown) => boolean = () => true,
): Grown {
  const known = grown.get(name);
  if (known && isEnough(known)) return known;
  const made = grow();
  grown.set(name, made);
  return made;
}

/** The cohorts of a surface: how many live of each, and their places in the shell table. */
interface Cohorts {
  readonly number: Float64Array;
  readonly place: Int32Array;
  count: number;
}

/** Sums over the cohorts of a surface, per m². */
interface Stand {
  number: number;
  cover: number;
  mass: number;
  killed: number;
}

/** Element of a list of plain numbers whose length the caller guarantees; kept apart from `at` for its speed. */
const valueAt = (list: Float64Array, index: number): number => list[index] ?? 0;

/** Fewer than this to a square metre are not followed further. */
const smallestCohort = 1 / 2;

export interface GrowthInput {
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
  growStands(input, parameters, (stand, month) => {
    const layer = describe(stand, parameters.bulkDensity);
    layers.push(layer);
    return input.cleanAfter?.(month, layer) ?? false;
  });
  return layers;
}

/**
 * Live mass that drying and frost kill on an untouched surface in each year, kg/m². Once the density has settled and
 * a dry run has left nothing alive, years repeat.
 */
export function killedByYear(input: GrowthInput, parameters: GrowthParameters): number[] {
  const { surface, density } = input;
  const years = density.length / 12;
  if (!surface.table.isEverDry) return Array<number>(years).fill(0);
  const settled = settledMonth(density);
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
  const killed = Array<number>(input.density.length / 12).fill(0);
  let bareMonth: number | undefined;
  growStands(input, parameters, (stand, month) => {
    const year = Math.floor(month / 12);
    killed[year] = (killed[year] ?? 0) + stand.killed;
    if (stand.number === 0 && month >= settled) bareMonth ??= month;
    return false;
  });
  return { killed, bareMonth };
}

/** The months told at `growLayers`; the surface is cleaned if `see`, which is shown what stands, says so. */
function growStands(
  { surface, density, firstMonth = 0 }: GrowthInput,
  parameters: GrowthParameters,
  see: (stand: Readonly<Stand>, month: number) => boolean,
): void {
  const { months, table } = surface;
  const monthlySurvival = Math.exp(-parameters.yearlyMortality / 12);
  const cohorts: Cohorts = {
    number: new Float64Array(density.length),
    place: new Int32Array(density.length),
    count: 0,
  };
  const stand: Stand = { number: 0, cover: 0, mass: 0, killed: 0 };
  for (let month = 0; month < density.length; month++) {
    const monthOfYear = (firstMonth + month) % 12;
    passMonth(cohorts, stand, table, monthlySurvival);
    const overCrowded = stand.cover / parameters.coverLimit;
    const settlement = at(months, monthOfYear).settlement * Math.max(0, 1 - overCrowded);
    const settlers = parameters.settlersPerMonth * at(density, month) * settlement;
    settle(cohorts, stand, table, settlers, settlersPlace(monthOfYear));
    if (overCrowded > 1) shed(cohorts, stand, 1 / overCrowded);
    if (see(stand, month)) cohorts.count = 0;
  }
}

/**
 * A month in the life of every cohort: the dry run kills at the size of the month before, the rest thins and
 * grows, and cohorts too small to follow are dropped. The cohort that passes the last age told apart joins the one
 * that settled a year later. In place and in one pass: this runs for each month of each plan.
 */
function passMonth(cohorts: Cohorts, stand: Stand, table: ShellTable, monthlySurvival: number): void {
  let kept = 0;
  let oldest = 0;
  let oldestPlace = -1;
  let living = 0;
  let cover = 0;
  let mass = 0;
  let killed = 0;
  for (let index = 0; index < cohorts.count; index++) {
    const before = cohorts.place[index] ?? 0;
    const place = nextPlace(before);
    let number = valueAt(cohorts.number, index);
    if (table.isEverDry) {
      const alive = number * valueAt(table.outlives, place);
      killed += (number - alive) * valueAt(table.mass, before);
      number = alive;
    }
    number *= monthlySurvival;
    if (place < before) {
      oldest = number;
      oldestPlace = place;
      continue;
    }
    if (place === oldestPlace) {
      number += oldest;
      oldest = 0;
    }
    if (number <= smallestCohort) continue;
    cohorts.number[kept] = number;
    cohorts.place[kept] = place;
    kept += 1;
    living += number;
    cover += number * valueAt(table.cover, place);
    mass += number * valueAt(table.mass, place);
  }
  cohorts.count = kept;
  stand.number = living;
  stand.cover = cover;
  stand.mass = mass;
  stand.killed = killed;
  if (oldest > smallestCohort) settle(cohorts, stand, table, oldest, oldestPlace);
}

function settle(cohorts: Cohorts, stand: Stand, table: ShellTable, number: number, place: number): void {
  if (number <= 0) return;
  cohorts.number[cohorts.count] = number;
  cohorts.place[cohorts.count] = place;
  cohorts.count += 1;
  stand.number += number;
  stand.cover += number * valueAt(table.cover, place);
  stand.mass += number * valueAt(table.mass, place);
}

function shed(cohorts: Cohorts, stand: Stand, keptShare: number): void {
  for (let index = 0; index < cohorts.count; index++) {
    cohorts.number[index] = valueAt(cohorts.number, index) * keptShare;
  }
  stand.number *= keptShare;
  stand.cover *= keptShare;
  stand.mass *= keptShare;
}

const mmPerM = 1e3;

function describe({ number, cover, mass, killed }: Stand, bulkDensity: number): Layer {
  if (number === 0) return killed === 0 ? bareSurface : { ...bareSurface, killed };
  const lengthMm = Math.sqrt(cover / number) * mmPerM;
  return {
    number,
    lengthMm,
    cover,
    mass,
    thickness: layerThickness({ mass, lengthMm, cover }, bulkDensity),
    killed,
  };
}

/**
 * Layer thickness, m: mass over bulk density, never less than one shell where the layer is closed
 * (cover of 1 or more) and in proportion to the cover where it is open, t = max(M/ρb, L·min(1, c)).
 */
export function layerThickness(
  layer: { mass: number; lengthMm: number; cover: number },
  bulkDensity: number,
): number {
  const oneShell = (layer.lengthMm / mmPerM) * Math.min(1, layer.cover);
  return Math.max(layer.mass / bulkDensity, oneShell);
}
