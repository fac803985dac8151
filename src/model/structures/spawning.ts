import type { Assumed } from "../assumed.js";
import type { Lake } from "../inputs.js";

/** Months whose surface water is warm enough for larvae to settle, in order of the year. */
export function spawningMonths(lake: Lake, assumed: Assumed): number[] {
  const from = assumed(`settlement.spawning-temperature.${lake.species}`);
  return lake.surfaceTemperature.flatMap((temperature, month) => (temperature >= from ? [month] : []));
}
