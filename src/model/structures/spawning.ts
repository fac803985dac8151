import type { LakeContext } from "./context.js";

/** Months whose surface water is warm enough for larvae to settle, in order of the year. */
export function spawningMonths({ lake, assumed }: Pick<LakeContext, "lake" | "assumed">): number[] {
  const from = assumed(`settlement.spawning-temperature.${lake.species}`);
  return lake.surfaceTemperature.flatMap((temperature, month) => (temperature >= from ? [month] : []));
}
