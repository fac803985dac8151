import { at, noElement } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { bareColony, type ColonyParameters, type ColonySurface, isBared, passMonth } from "./cohorts.js";
import type { DryingParameters } from "./drying.js";
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

interface GrowthInput {
  readonly surface: ColonySurface;
  /** Lake-wide density over capacity times suitability, one value per month. */
  readonly density: readonly number[];
  /** First month from which the density no longer changes. */
  readonly settled: number;
}

/**
 * Live mass that drying and frost kill on an untouched surface in each year, kg/m². Once the density has settled and
 * a dry run has left nothing alive, years repeat.
 */
export function killedByYear(
  { surface, density, settled }: GrowthInput,
  parameters: GrowthParameters,
): number[] {
  const years = density.length / 12;
  const killed = Array<number>(years).fill(0);
  if (!isEverDry(surface.months)) return killed;
  const colony = bareColony(surface, parameters, new Float64Array(density.length));
  const tried = Math.ceil(settled / 12) + 2;
  let isRepeated = false;
  for (let month = 0; month < density.length; month++) {
    const year = Math.floor(month / 12);
    if (year === tried && isRepeated) return killed.fill(at(killed, year - 1), year);
    passMonth(colony, month % 12, density[month] ?? noElement(density, month));
    killed[year] = (killed[year] ?? 0) + colony.killed;
    if (month >= settled && year < tried - 1 && isBared(colony)) isRepeated = true;
  }
  return killed;
}
