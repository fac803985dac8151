import { requireBetween, requireCount, requireNotNegative } from "./allowed.js";
import { type RunningMoments, standardError, variance } from "./running-moments.js";

interface StopTarget {
  /** Largest standard error of the mean, as a share of the mean's size. */
  readonly share: number;
  /** Largest standard error whatever the mean. */
  readonly error: number;
  /** Draws before which nothing is judged, 2 or more: the variance of a few draws may be small by luck. */
  readonly least: number;
  /** Most draws. */
  readonly cap: number;
}

/** What to do next after a number of draws. */
type NextStep =
  | { readonly step: "more"; readonly draws: number }
  | { readonly step: "done"; readonly standardError: number }
  /** The target was not met with the most draws: near a mean of 0 no number of draws meets a share of it. */
  | { readonly step: "capped"; readonly standardError: number };

/**
 * Whether a mean of independent draws, such as the difference in net benefit of two options in the same draws, is known
 * well enough: done once its standard error is at most the share of its size and at most the largest one. Else the draws
 * that would reach it by the variance so far, n = variance/target², at most as many again as there are (so that a poor
 * first guess does not decide) and never beyond the cap. As the rule looks at the draws themselves, the mean at the stop is a
 * little less sure than its standard error says; a larger `least` mends that. The draws of one Latin hypercube are not
 * independent: take the means of several hypercubes with seeds of their own as the draws.
 * @throws RangeError for a share that is not between 0 and 1, a negative error, or counts that are not whole with 2 ≤ least ≤ cap
 */
export function nextStep(
  moments: RunningMoments,
  { share, error: largest, least, cap }: StopTarget,
): NextStep {
  requireBetween("share", share, 0, 1);
  requireNotNegative("largest error", largest);
  requireCount("least draws", least, 2);
  requireCount("most draws", cap, least);
  const { count, mean } = moments;
  if (count < least) return { step: "more", draws: least - count };
  const error = standardError(moments);
  const target = Math.min(share * Math.abs(mean), largest);
  if (error <= target) return { step: "done", standardError: error };
  if (count >= cap) return { step: "capped", standardError: error };
  const missing = target > 0 ? Math.ceil(variance(moments) / target ** 2) - count : count;
  return { step: "more", draws: Math.min(Math.max(missing, 1), count, cap - count) };
}
