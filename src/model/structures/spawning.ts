import type { Assumed } from "../assumed.js";
import type { Lake } from "../lake/lake.js";
import { bySpecies } from "../mussels/surface.js";

/** Months whose surface water is warm enough for larvae to settle, in order of the year. */
export function spawningMonths(lake: Lake, assumed: Assumed): number[] {
  const from = assumed(bySpecies[lake.species].spawningTemperature);
  return lake.surfaceTemperature.flatMap((temperature, month) => (temperature >= from ? [month] : []));
}
