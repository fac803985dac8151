import type { Assumption } from "../../assumptions/entry.js";
import type { MeasuredValue } from "../../study/exports/orders/work-sums.js";

/**
 * How far a measured value may reach either way: what its orders span, with the usual range counted as one order, so that one
 * order is not taken as certain. Never below the smallest order, or as far below the mean as the usual low is below the usual.
 */
export function rangeAround(
  { mean, smallest, halfSpan, orders }: MeasuredValue,
  { low, value, high }: Pick<Assumption, "low" | "value" | "high">,
): number {
  const usual = (mean * (high - low)) / (2 * value);
  const pooled = Math.sqrt(((orders - 1) * halfSpan ** 2 + usual ** 2) / orders);
  return Math.min(pooled, mean - Math.min(smallest, (mean * low) / value));
}
