import type { Assumed } from "../assumed.js";
import { at } from "../lake/calendar.js";
import type { DryingParameters } from "./drying.js";
import type { ShellParameters } from "./shell.js";
import { type ShellTable, shellTable, tablePlace } from "./shell-table.js";
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
}

export function growingSurface(
  months: readonly SurfaceMonth[],
  parameters: GrowthParameters,
): GrowingSurface {
  return { months, table: shellTable(months, parameters.shell, parameters.drying) };
}

interface Cohort {
  number: number;
  readonly settledIn: number;
}

/** Fewer than this to a square metre are not followed further. */
const smallestCohort = 1 / 2;

/**
 * Grows the layer on a surface month by month from a bare start in January.
 * Each month: the dry run kills, the living age and grow, new settlers take their share of the free space,
 * crowding sheds what has no room; then the surface is cleaned if the month is a cleaning month.
 * @param input.density lake-wide density over capacity times suitability, one value per month
 * @param input.cleanAfter true for a month at whose end the surface is cleaned
 * @returns the layer at each month's end, before any cleaning
 */
export function growLayers(
  input: {
    surface: GrowingSurface;
    density: readonly number[];
    cleanAfter: (month: number, layer: Layer) => boolean;
  },
  parameters: GrowthParameters,
): Layer[] {
  const { months, table } = input.surface;
  const monthlySurvival = Math.exp(-parameters.yearlyMortality / 12);
  const cohorts: Cohort[] = [];
  return input.density.map((density, month) => {
    const killed = table.isEverDry ? applyDryRun(cohorts, month, table) : 0;
    age(cohorts, monthlySurvival);
    const cover = coverOf(cohorts, month, table);
    const freeSpace = Math.max(0, 1 - cover / parameters.coverLimit);
    const settlers = parameters.settlersPerMonth * density * at(months, month % 12).settlement * freeSpace;
    if (settlers > 0) cohorts.push({ number: settlers, settledIn: month });
    shedCrowded(cohorts, cover, parameters);
    const layer = describe(cohorts, month, table, { killed, bulkDensity: parameters.bulkDensity });
    if (input.cleanAfter(month, layer)) cohorts.length = 0;
    return layer;
  });
}

const placeOf = ({ settledIn }: Cohort, month: number) => tablePlace(settledIn % 12, month - settledIn);

/** Thins every cohort and drops those too small to follow, in place: this runs for each month of each plan. */
function age(cohorts: Cohort[], monthlySurvival: number): void {
  let kept = 0;
  for (const cohort of cohorts) {
    cohort.number *= monthlySurvival;
    if (cohort.number > smallestCohort) {
      cohorts[kept] = cohort;
      kept += 1;
    }
  }
  cohorts.length = kept;
}

function coverOf(cohorts: readonly Cohort[], month: number, table: ShellTable): number {
  let cover = 0;
  for (const cohort of cohorts) cover += cohort.number * at(table.cover, placeOf(cohort, month));
  return cover;
}

function applyDryRun(cohorts: readonly Cohort[], month: number, table: ShellTable): number {
  let killed = 0;
  for (const cohort of cohorts) {
    const dead = cohort.number * (1 - at(table.outlives, placeOf(cohort, month)));
    killed += dead * at(table.mass, placeOf(cohort, month - 1));
    cohort.number -= dead;
  }
  return killed;
}

function shedCrowded(cohorts: readonly Cohort[], cover: number, { coverLimit }: GrowthParameters): void {
  if (cover <= coverLimit) return;
  for (const cohort of cohorts) cohort.number *= coverLimit / cover;
}

const mmPerM = 1e3;

function describe(
  cohorts: readonly Cohort[],
  month: number,
  table: ShellTable,
  rest: { killed: number; bulkDensity: number },
): Layer {
  let number = 0;
  let cover = 0;
  let mass = 0;
  for (const cohort of cohorts) {
    const place = placeOf(cohort, month);
    number += cohort.number;
    cover += cohort.number * at(table.cover, place);
    mass += cohort.number * at(table.mass, place);
  }
  if (number === 0) return rest.killed === 0 ? bareSurface : { ...bareSurface, killed: rest.killed };
  const lengthMm = Math.sqrt(cover / number) * mmPerM;
  const thickness = layerThickness({ mass, lengthMm, cover }, rest.bulkDensity);
  return { number, lengthMm, cover, mass, thickness, killed: rest.killed };
}

/**
 * Layer thickness, m: mass over bulk density, never less than one shell where the layer is closed
 * (cover of 1 or more) and in proportion to the cover where it is open.
 */
export function layerThickness(
  layer: { mass: number; lengthMm: number; cover: number },
  bulkDensity: number,
): number {
  const oneShell = (layer.lengthMm / mmPerM) * Math.min(1, layer.cover);
  return Math.max(layer.mass / bulkDensity, oneShell);
}
