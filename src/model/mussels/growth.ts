import { at, noElement } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { bareColony, type ColonyParameters, type ColonySurface, isBared, passMonth } from "./cohorts.js";
import { numberRoom } from "./number-room.js";
import type { MusselParameters } from "./shell-table.js";

export interface GrowthParameters extends ColonyParameters, MusselParameters {
  readonly bulkDensity: number;
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
    room: numberRoom(),
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
  const killed: number[] = [];
  const colony = bareColony(surface, parameters, parameters.room(density.length));
  const tried = Math.ceil(settled / 12) + 2;
  let isRepeated = false;
  for (let year = 0; year < years; year++) {
    if (year >= tried && isRepeated) {
      killed.push(at(killed, year - 1));
      continue;
    }
    let mass = 0;
    for (let month = year * 12; month < year * 12 + 12; month++) {
      passMonth(colony, month % 12, density[month] ?? noElement(density, month));
      mass += colony.killed;
      if (month >= settled && year < tried - 1 && isBared(colony)) isRepeated = true;
    }
    killed.push(mass);
  }
  return killed;
}
