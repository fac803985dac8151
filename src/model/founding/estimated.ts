import type { FoundingEstimate } from "./founding-estimate.js";
import type { Tenths } from "./log-density.js";

/** Assumptions that are estimated from published counts, and in no file by themselves. */
export const estimatedIds = [
  "arrival.founding-unknown",
  "arrival.founding-near",
  "arrival.founding-far",
  "arrival.base-rate-open",
  "arrival.base-rate-inspected",
  "arrival.living-share-near",
  "arrival.living-share-far",
  "arrival.living-share-unknown",
] as const;

export type EstimatedId = (typeof estimatedIds)[number];

/** What the counts say of each. */
export const estimatedFigures = (estimate: FoundingEstimate): Readonly<Record<EstimatedId, Tenths>> => ({
  "arrival.founding-unknown": estimate.unknown,
  "arrival.founding-near": estimate.near,
  "arrival.founding-far": estimate.far,
  "arrival.base-rate-open": estimate.openLake,
  "arrival.base-rate-inspected": estimate.inspectedLake,
  "arrival.living-share-near": estimate.living.near,
  "arrival.living-share-far": estimate.living.far,
  "arrival.living-share-unknown": livingUnknown(estimate),
});

/**
 * Living share of fouled boats that come from nobody knows where: that which turns the chance per fouled launch into the
 * chance per launch with living mussels. It may be as low as of long hauls, and as high as near a source.
 */
function livingUnknown({ unknown, perLivingLaunch, living }: FoundingEstimate): Tenths {
  const p50 = Math.min(1, unknown.p50 / perLivingLaunch.p50);
  return { p10: Math.min(p50, living.far.p10), p50, p90: Math.max(p50, living.near.p90) };
}
