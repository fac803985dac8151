import { at, sumOf } from "../../lists.js";
import { Money } from "./decimal.js";

/** Shares that cannot divide an amount. */
export class SplitError extends Error {}

/** How far typed shares may miss 100 % by their binary form. */
const roundingError = 1e-9;

/**
 * Parts of an amount by shares that make up 100 %, in whole cents that sum to the amount exactly.
 * @param cents whole, also negative
 * @throws SplitError if the shares do not sum to 1, or one is negative
 */
export function splitByShares(cents: number, shares: readonly number[]): number[] {
  const sum = sumOf(shares);
  if (!(Math.abs(sum - 1) <= roundingError)) {
    throw new SplitError(
      `shares that sum to ${Number((sum * 100).toPrecision(12))} %; allowed: 100 % in all. Correct one of them.`,
    );
  }
  return splitByWeights(cents, shares);
}

/**
 * Parts of an amount in proportion to weights, in whole cents that sum to the amount exactly, by largest remainders
 * (Hamilton's method): each gets the whole cents of its exact part, and the cents left over go to the largest
 * remainders, of equal ones to the first. A negative amount is split as its opposite.
 * @throws SplitError if a weight is negative, or none is above 0; if the amount is no whole number of cents
 */
export function splitByWeights(cents: number, weights: readonly number[]): number[] {
  if (!Number.isSafeInteger(cents)) throw new SplitError(`${cents} cents; allowed: a whole number of cents`);
  const bad = weights.find((weight) => !(weight >= 0 && Number.isFinite(weight)));
  if (bad !== undefined) throw new SplitError(`a share of ${bad}; allowed: 0 or more`);
  const exactWeights = weights.map((weight) => new Money(weight));
  const sum = exactWeights.reduce((total, weight) => total.plus(weight), new Money(0));
  if (sum.isZero()) throw new SplitError("no share above 0; allowed: at least one");
  const quotas = exactWeights.map((weight) => weight.times(Math.abs(cents)).dividedBy(sum));
  const parts = quotas.map((quota) => quota.floor().toNumber());
  const left = Math.abs(cents) - sumOf(parts);
  const byRemainder = quotas
    .map((quota, index) => ({ index, remainder: quota.minus(at(parts, index)) }))
    .sort((one, other) => other.remainder.comparedTo(one.remainder) || one.index - other.index);
  for (const { index } of byRemainder.slice(0, left)) parts[index] = at(parts, index) + 1;
  return parts.map((part) => (cents < 0 && part > 0 ? -part : part));
}
