import { requireCount } from "./allowed.js";
import { sampleQuantiles } from "./sample-quantile.js";

interface ExceedancePoint {
  readonly value: number;
  /** Chance of more than the value. */
  readonly chance: number;
}

/**
 * Points of the curve that tells how likely more than a value is: chances in `steps` equal steps from 1 at the least
 * draw to 0 at the greatest, each with the sample quantile of 1 − chance.
 * @throws RangeError without values, for values that are not finite, or steps that are no whole number from 1
 */
export function exceedanceCurve(values: ArrayLike<number>, steps: number): ExceedancePoint[] {
  requireCount("steps of the curve", steps, 1);
  const shares = Array.from({ length: steps + 1 }, (_, step) => step / steps);
  const quantiles = sampleQuantiles(values, shares);
  // Not 1 − share, which is above 0.05 for 0.95: whoever looks for 5 % would find the next step.
  return quantiles.map((value, step) => ({ value, chance: (steps - step) / steps }));
}
