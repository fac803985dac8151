import { at, sumOf } from "../../lists.js";
import { requireValues } from "../uncertainty/allowed.js";
import { sortedQuantile, sortedSample } from "../uncertainty/sample-quantile.js";
import { studentQuantile } from "../uncertainty/student-quantile.js";

/** A figure from draws, with its standard error. */
export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

/**
 * Mean of draws that come in clusters of equal size, with the standard error of the clusters' means, s/√m. The clusters
 * must be independent of one another, the draws in one need not be: a Latin hypercube with all its futures is a cluster.
 * Of a single cluster there is no error, and it is refused.
 */
export function clusteredMean(values: ArrayLike<number>, clusters: number): Estimate {
  const means = clusterMeans(values, clusters);
  requireValues("means of clusters", means, 2);
  const value = sumOf(means) / clusters;
  const squares = means.reduce((sum, mean) => sum + (mean - value) ** 2, 0);
  return { value, standardError: Math.sqrt(squares / (clusters - 1) / clusters) };
}

function clusterMeans(values: ArrayLike<number>, clusters: number): number[] {
  const size = values.length / clusters;
  if (!Number.isInteger(size)) {
    throw new RangeError(`${values.length} draws in ${clusters} clusters; allowed: as many draws in each`);
  }
  return Array.from({ length: clusters }, (_, cluster) => {
    let sum = 0;
    for (let draw = cluster * size; draw < (cluster + 1) * size; draw++) sum += at(values, draw);
    return sum / size;
  });
}

/** A share with the limits of its confidence interval. */
interface ShareEstimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Share of clustered draws and its interval p ± t s, kept in 0 to 1; of none or all of the draws it is a point. t is
 * Student's, with a degree of freedom less than there are clusters.
 * @param shares of each draw: 1 or 0, or a chance
 */
export function clusteredShare(
  shares: ArrayLike<number>,
  clusters: number,
  confidence: number,
): ShareEstimate {
  const { value, standardError } = clusteredMean(shares, clusters);
  const margin = studentQuantile((1 + confidence) / 2, clusters - 1) * standardError;
  return { value, low: Math.max(0, value - margin), high: Math.min(1, value + margin) };
}

export interface QuantileEstimate {
  readonly value: number;
  /** Limits of its confidence interval. */
  readonly low: number;
  readonly high: number;
}

/**
 * Quantiles of clustered draws (type 7 of Hyndman and Fan) and their confidence intervals: the quantiles at p ± t s, s the
 * standard error of the share of draws up to the estimate. Source: Woodruff 1952. Confidence intervals for medians and
 * other position measures. JASA 47(260):635-646 (from memory).
 * @param shares p of each quantile
 * @param confidence of the intervals, for instance 0.95
 */
export function clusteredQuantiles(
  values: ArrayLike<number>,
  clusters: number,
  shares: readonly number[],
  confidence: number,
): QuantileEstimate[] {
  const sorted = sortedSample(values);
  const atShare = (share: number) => sortedQuantile(sorted, Math.min(1, Math.max(0, share)));
  return shares.map((p) => {
    const value = atShare(p);
    const below = Float64Array.from(values, (each) => Number(each <= value));
    const { standardError } = clusteredMean(below, clusters);
    const margin = studentQuantile((1 + confidence) / 2, clusters - 1) * standardError;
    return { value, low: atShare(p - margin), high: atShare(p + margin) };
  });
}
