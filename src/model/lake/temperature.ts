import { at } from "../../lists.js";
import { daysOf } from "./calendar.js";
import type { Lake } from "./lake.js";

/** Water temperature in a month at a depth, °C: that of the surface down to the thermocline, y ≤ yt, the deep one below, y > yt. */
export function waterTemperature(lake: Lake, month: number, depth: number): number {
  return at(depth <= lake.thermoclineDepth ? lake.surfaceTemperature : lake.deepTemperature, month);
}

/** Degree-days of a month above a base: DD = d·max(0, T − Tb), °C·d. */
export function degreeDays(meanTemperature: number, base: number, month: number): number {
  return Math.max(0, meanTemperature - base) * daysOf(month);
}
