import type { Assumed } from "../assumed.js";
import { at } from "../lake/calendar.js";
import type { DryingParameters } from "./drying.js";
import type { ShellParameters } from "./shell.js";
import { nextPlace, type ShellTable, settlersPlace, shellTable } from "./shell-table.js";
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
  /** Place in the shell table. */
  place: number;
}

/** Sums over the cohorts of a surface, per m². */
interface Stand {
  number: number;
  cover: number;
  mass: number;
  killed: number;
}

/** Fewer than this to a square metre are not followed further. */
const smallestCohort = 1 / 2;

/**
 * Grows the layer on a surface month by month from a bare start in January.
 * Each month: the dry run kills, the living age and grow, N exp(−m/12) of them live on; new settlers take their
 * share of the free space, n D s max(0, 1 − c/cmax); crowding sheds what has no room, so that c = Σ N L² stays
 * within cmax; then the surface is cleaned if the month is a cleaning month. Yearly mortality: Karatayev and others
 * 2006; settlers: after densities in `cwcb-133969`.
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
    const stand = passMonth(cohorts, table, monthlySurvival);
    const overCrowded = stand.cover / parameters.coverLimit;
    const settlement = at(months, month % 12).settlement * Math.max(0, 1 - overCrowded);
    settle(cohorts, stand, table, {
      number: parameters.settlersPerMonth * density * settlement,
      place: settlersPlace(month % 12),
    });
    if (overCrowded > 1) shed(cohorts, stand, 1 / overCrowded);
    const layer = describe(stand, parameters.bulkDensity);
    if (input.cleanAfter(month, layer)) cohorts.length = 0;
    return layer;
  });
}

/**
 * A month in the life of every cohort: the dry run kills at the size of the month before, the rest thins and
 * grows, and cohorts too small to follow are dropped. In place and in one pass: this runs for each month of each
 * plan.
 */
function passMonth(cohorts: Cohort[], table: ShellTable, monthlySurvival: number): Stand {
  const stand = { number: 0, cover: 0, mass: 0, killed: 0 };
  let kept = 0;
  for (const cohort of cohorts) {
    const place = nextPlace(cohort.place);
    if (table.isEverDry) {
      const dead = cohort.number * (1 - at(table.outlives, place));
      stand.killed += dead * at(table.mass, cohort.place);
      cohort.number -= dead;
    }
    cohort.number *= monthlySurvival;
    cohort.place = place;
    if (cohort.number <= smallestCohort) continue;
    cohorts[kept] = cohort;
    kept += 1;
    addTo(stand, cohort, table);
  }
  cohorts.length = kept;
  return stand;
}

function addTo(stand: Stand, { number, place }: Cohort, table: ShellTable): void {
  stand.number += number;
  stand.cover += number * at(table.cover, place);
  stand.mass += number * at(table.mass, place);
}

function settle(cohorts: Cohort[], stand: Stand, table: ShellTable, settlers: Cohort): void {
  if (settlers.number <= 0) return;
  cohorts.push(settlers);
  addTo(stand, settlers, table);
}

function shed(cohorts: readonly Cohort[], stand: Stand, keptShare: number): void {
  for (const cohort of cohorts) cohort.number *= keptShare;
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
