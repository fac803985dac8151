import { normalQuantile } from "../model/uncertainty/normal-quantile.js";

/** Standard deviations within which a normal range is drawn. */
const normalReach = 3;

/** The normal distribution of a range from P10 to P90, cut off where nothing more is drawn. */
export function normalRange({ low, high }: { readonly low: number; readonly high: number }) {
  const mean = (low + high) / 2;
  const standardDeviation = (high - mean) / normalQuantile(9 / 10);
  const reach = normalReach * standardDeviation;
  return { mean, standardDeviation, low: mean - reach, high: mean + reach };
}
