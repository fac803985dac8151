import { at } from "../../lists.js";
import { requireValues, requireWithin } from "./allowed.js";

/**
 * Values that shares p of the sample do not exceed, in the order asked for: definition 7 of Hyndman and Fan 1996 (The
 * American Statistician 50(4):361-365), linear between order statistics at h = (n − 1)p + 1; the default of R and NumPy,
 * PERCENTILE.INC of spreadsheets. p = 0 is the least value, 1 the greatest.
 * @throws RangeError without values, for values that are not finite, or p outside 0 to 1
 */
export function sampleQuantiles(values: ArrayLike<number>, shares: readonly number[]): number[] {
  const sorted = sortedSample(values);
  return shares.map((p) => sortedQuantile(sorted, p));
}

/** A sample from its least value to its greatest. @throws RangeError without values, or for values that are not finite */
export function sortedSample(values: ArrayLike<number>): Float64Array {
  requireValues("sample", values, 1);
  return Float64Array.from(values).sort();
}

/** One of `sampleQuantiles` of a sample that is sorted already. */
export function sortedQuantile(sorted: Float64Array, p: number): number {
  requireWithin("share", p, 0, 1);
  const place = (sorted.length - 1) * p;
  const below = Math.floor(place);
  const [lower, upper] = [at(sorted, below), at(sorted, Math.ceil(place))];
  return lower + (place - below) * (upper - lower);
}
