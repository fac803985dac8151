import { at } from "../lake/calendar.js";
import { requireSameLength, requireValues } from "./allowed.js";
import { ranks } from "./ranks.js";

/**
 * Pearson's correlation of paired values, −1 to 1.
 * @throws RangeError for lists of unequal length or below 2, values that are not finite, or a list of equal values
 */
export function correlation(first: readonly number[], second: readonly number[]): number {
  requireSameLength("the first list", first, "the second", second);
  const [one, other] = [deviations("the first list", first), deviations("the second list", second)];
  const product = one.reduce((sum, value, index) => sum + value * at(other, index), 0);
  return Math.max(-1, Math.min(1, product));
}

/** Differences from the mean, divided by the root of their sum of squares. */
function deviations(name: string, values: readonly number[]): number[] {
  requireValues(name, values, 2);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const size = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0));
  if (values.every((value) => value === values[0])) {
    throw new RangeError(`${name} holds ${values[0]} throughout; allowed: values that differ`);
  }
  return values.map((value) => (value - mean) / size);
}

/**
 * Spearman's rank correlation: Pearson's correlation of the ranks, equal values with the mean of their ranks.
 * @throws RangeError as for Pearson's correlation
 */
export function rankCorrelation(first: readonly number[], second: readonly number[]): number {
  requireValues("the first list", first, 2);
  requireValues("the second list", second, 2);
  return correlation(ranks(first), ranks(second));
}
