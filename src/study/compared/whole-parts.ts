import { at, sumOf } from "../../lists.js";

/**
 * Parts in whole units that add up to a whole total exactly: each is rounded down, and what is left over goes to the
 * largest remainders, of equal ones to the first. Parts may be negative.
 * @param exact parts that add up to the total but for rounding
 */
export function wholeParts(exact: readonly number[], total: number): number[] {
  const parts = exact.map(Math.floor);
  let left = total - sumOf(parts);
  const byRemainder = exact
    .map((value, index) => ({ index, remainder: value - at(parts, index) }))
    .sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  while (left !== 0 && byRemainder.length > 0) {
    const step = Math.sign(left);
    for (const { index } of step > 0 ? byRemainder : byRemainder.toReversed()) {
      if (left === 0) break;
      parts[index] = at(parts, index) + step;
      left -= step;
    }
  }
  return parts;
}
