import { at } from "../lists.js";
import { incompleteBeta } from "../risk/beta.js";
import { requireBetween, requireValues } from "./allowed.js";

export interface QuantileInterval {
  readonly low: number;
  readonly high: number;
  /** Chance that an interval so found holds the quantile, at least the confidence asked for. */
  readonly coverage: number;
}

/**
 * Two order statistics between which the true quantile of share p lies with at least the confidence given, whatever the
 * distribution: x_(l) to x_(u) hold it if the number of draws below it, binomial (n, p), is from l to u − 1. Each side is
 * left at most half of the chance that the confidence leaves. For independent draws; for stratified ones it is mostly wider
 * than need be.
 * Source: David and Nagaraja 2003, Order Statistics, section 7.1 (from memory).
 * @throws RangeError if the draws are too few for an end on each side, or p or the confidence is not between 0 and 1
 */
export function quantileInterval(values: readonly number[], p: number, confidence: number): QuantileInterval {
  requireBetween("share", p, 0, 1);
  requireBetween("confidence", confidence, 0, 1);
  requireValues("sample", values, 1);
  const count = values.length;
  const side = (1 - confidence) / 2;
  const lower = firstWhere(count, (rank) => binomialChance(rank, count, p) > side);
  const upper = 1 + firstWhere(count, (rank) => 1 - binomialChance(rank, count, p) <= side);
  if (lower < 1 || upper > count) {
    throw new RangeError(
      `${count} draws for an interval of the quantile ${p} with confidence ${confidence}; allowed: ${leastCount(p, side)} or more`,
    );
  }
  const sorted = values.toSorted((one, other) => one - other);
  return {
    low: at(sorted, lower - 1),
    high: at(sorted, upper - 1),
    coverage: binomialChance(upper - 1, count, p) - binomialChance(lower - 1, count, p),
  };
}

/** Chance of at most k of n events, each of chance p: I_{1−p}(n − k, k + 1) (DLMF 8.17.5). */
function binomialChance(k: number, n: number, p: number): number {
  return k >= n ? 1 : incompleteBeta(1 - p, n - k, k + 1);
}

/** First whole number from 0 to the last for which a condition holds that holds for all from there on. */
function firstWhere(last: number, holds: (value: number) => boolean): number {
  let [low, high] = [0, last];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Draws from which neither all nor none lie below the quantile with more than the side's chance. */
function leastCount(p: number, side: number): number {
  return Math.ceil(Math.log(side) / Math.log(Math.max(p, 1 - p)));
}
