import { requireFinite } from "./allowed.js";

/** Mean and spread of values seen one by one; none are kept. */
export interface RunningMoments {
  readonly count: number;
  /** 0 before the first value. */
  readonly mean: number;
  /** Sum of squared differences from the mean. */
  readonly squares: number;
}

export const noValues: RunningMoments = { count: 0, mean: 0, squares: 0 };

/**
 * The moments with one more value. Source: Welford 1962, Technometrics 4(3):419-420 (from memory).
 * @throws RangeError for a value that is not finite
 */
export function withValue({ count, mean, squares }: RunningMoments, value: number): RunningMoments {
  requireFinite(`value ${count}`, value);
  const change = value - mean;
  const moved = mean + change / (count + 1);
  return { count: count + 1, mean: moved, squares: squares + change * (value - moved) };
}

export function momentsOf(values: readonly number[]): RunningMoments {
  return values.reduce(withValue, noValues);
}

/**
 * Sample variance, with n − 1 below.
 * @throws RangeError below 2 values
 */
export function variance({ count, squares }: RunningMoments): number {
  if (count < 2) throw new RangeError(`a variance of ${count} values; allowed: 2 or more`);
  return squares / (count - 1);
}

/**
 * Standard error of the mean of independent values. For stratified draws the true one is mostly smaller.
 * @throws RangeError below 2 values
 */
export function standardError(moments: RunningMoments): number {
  return Math.sqrt(variance(moments) / moments.count);
}
