import { requireBetween, requireCount } from "./allowed.js";
import { normalQuantile } from "./normal-quantile.js";

/**
 * Interval of a true share of which `found` of `count` independent draws were seen, by Wilson's score: those shares of
 * which the count found is within z standard errors. It stays in 0 to 1 and does not shrink to a point at none or all.
 * Source: Wilson 1927, Journal of the American Statistical Association 22:209-212 (from memory).
 * @throws RangeError unless 0 ≤ found ≤ count, whole, count from 1, and the confidence is between 0 and 1
 */
export function wilsonInterval(
  found: number,
  count: number,
  confidence: number,
): { readonly low: number; readonly high: number } {
  requireCount("count", count, 1);
  requireCount("found", found, 0, count);
  requireBetween("confidence", confidence, 0, 1);
  const square = normalQuantile((1 + confidence) / 2) ** 2;
  const share = found / count;
  const centre = (share + square / (2 * count)) / (1 + square / count);
  const half =
    Math.sqrt((square * (share * (1 - share) + square / (4 * count))) / count) / (1 + square / count);
  return {
    low: found === 0 ? 0 : Math.max(0, centre - half),
    high: found === count ? 1 : Math.min(1, centre + half),
  };
}
