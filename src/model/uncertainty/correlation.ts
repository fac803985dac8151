import { at, meanOf } from "../../lists.js";
import { requireSameLength, requireValues } from "./allowed.js";

/**
 * Pearson's correlation of paired values, −1 to 1.
 * @throws RangeError for lists of unequal length or below 2, values that are not finite, or a list of equal values
 */
export function correlation(first: readonly number[], second: readonly number[]): number {
  requireSameLength("the first list", first, "the second", second);
  return ofDeviations(deviations("the first list", first), deviations("the second list", second));
}

/** The same of any two of several lists of equal length: a row for each. */
export function correlations(lists: readonly (readonly number[])[]): number[][] {
  const ofLists = lists.map((list, index) => deviations(`list ${index}`, list));
  return ofLists.map((one) => ofLists.map((other) => ofDeviations(one, other)));
}

function ofDeviations(one: readonly number[], other: readonly number[]): number {
  let product = 0;
  for (let index = 0; index < one.length; index++) product += at(one, index) * at(other, index);
  return Math.max(-1, Math.min(1, product));
}

/** Differences from the mean, divided by the root of their sum of squares. */
function deviations(name: string, values: readonly number[]): number[] {
  requireValues(name, values, 2);
  if (values.every((value) => value === values[0])) {
    throw new RangeError(`${name} holds ${values[0]} throughout; allowed: values that differ`);
  }
  const mean = meanOf(values);
  const differences = values.map((value) => value - mean);
  const size = Math.sqrt(differences.reduce((sum, difference) => sum + difference ** 2, 0));
  requireSize(name, size);
  return differences.map((difference) => difference / size);
}

/** @throws RangeError for values so near or so far that the squares of their differences are no longer numbers above 0 */
function requireSize(name: string, size: number): void {
  if (!(size > 0 && Number.isFinite(size))) {
    throw new RangeError(`${name} has a spread of ${size}; allowed: finite, above 0. Take another unit`);
  }
}
