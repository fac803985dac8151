import { at } from "../lake/calendar.js";
import { requireValues, requireWithin } from "./allowed.js";

/**
 * Value that a share p of the sample does not exceed: definition 7 of Hyndman and Fan 1996 (The American Statistician
 * 50(4):361-365), linear between order statistics at h = (n − 1)p + 1; the default of R and NumPy, PERCENTILE.INC of
 * spreadsheets. p = 0 is the least value, 1 the greatest.
 * @throws RangeError without values, for values that are not finite, or p outside 0 to 1
 */
export function sampleQuantile(values: readonly number[], p: number): number {
  return at(sampleQuantiles(values, [p]), 0);
}

/** Several quantiles of one sample, in the order asked for; as `sampleQuantile`. */
export function sampleQuantiles(values: readonly number[], shares: readonly number[]): number[] {
  requireValues("sample", values, 1);
  const sorted = values.toSorted((one, other) => one - other);
  return shares.map((p) => {
    requireWithin("share", p, 0, 1);
    const place = (sorted.length - 1) * p;
    const below = Math.floor(place);
    const [lower, upper] = [at(sorted, below), at(sorted, Math.ceil(place))];
    return lower + (place - below) * (upper - lower);
  });
}
