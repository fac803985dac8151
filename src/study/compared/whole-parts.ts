import { at, sumOf } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";

/**
 * Whole parts that add up to a whole total exactly: each is rounded down, and the rest goes to the largest remainders,
 * to the first among equals. Parts may be negative.
 * @param exact parts that add up to the total, rounding apart
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

/** Two amounts and the parts of their difference, in whole units of money that add up. */
export interface WholeAmounts {
  readonly left: number;
  readonly right: number;
  readonly parts: readonly number[];
}

/** @param cents nothing where an amount is told of one side alone */
export function wholeAmounts(cents: {
  readonly left: number | undefined;
  readonly right: number | undefined;
  readonly parts: readonly number[];
}): WholeAmounts | undefined {
  if (cents.left === undefined || cents.right === undefined) return undefined;
  const [left, right] = [Math.round(cents.left / centsPerUnit), Math.round(cents.right / centsPerUnit)];
  const exact = cents.parts.map((part) => part / centsPerUnit);
  return { left, right, parts: wholeParts(exact, right - left) };
}
