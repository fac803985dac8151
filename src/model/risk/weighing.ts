import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { Boats } from "../inputs.js";
import { foundingChances, shareOfWay } from "../program/founding-chances.js";
import type { AssumptionId } from "../register/register.js";
import { rateOfLakes } from "./founding-rates.js";

/** Standard deviation of the logarithm of an assumption. */
export type LogSpreads = (id: AssumptionId) => number;

/** Weight of the first of two independent estimates of one quantity, inverse to their variances. */
export const weightOf = (first: number, second: number): number => second / (first + second);

/**
 * Variance of ln of the rate from fouled launches: that of α, whose classes err together, in proportion to the
 * foundings that each brings, and that of the launches counted.
 */
export function launchesVariance(boats: Boats, source: Assumed, spreadOf: LogSpreads): number {
  const chances = foundingChances(boats, source);
  const brought = boats.classes.map((each, index) => each.share * each.fouled * at(chances, index));
  const all = sumOf(brought);
  const spreads = boats.classes.map(({ daysSince }, index) =>
    at(brought, index) === 0 ? 0 : spreadOfReach(daysSince, source, spreadOf),
  );
  const together = all === 0 ? 0 : sumOf(brought.map((each, index) => (each / all) * at(spreads, index)));
  return together ** 2 + source("arrival.fouled-count-spread") ** 2;
}

function spreadOfReach(days: number | undefined, source: Assumed, spreadOf: LogSpreads): number {
  if (days === undefined) return spreadOf("arrival.founding-unknown");
  const share = shareOfWay(days, source("arrival.near-days"), source("arrival.far-days"));
  return (1 - share) * spreadOf("arrival.founding-near") + share * spreadOf("arrival.founding-far");
}

/** Variance of ln of the rate of comparable lakes; an own rate has a spread of its own. */
export function lakesVariance({ comparable }: Boats, source: Assumed, spreadOf: LogSpreads): number {
  const { rate } = comparable;
  if ("own" in rate) return source("arrival.own-rate-spread") ** 2;
  const open = spreadOf("arrival.base-rate-open") ** 2;
  const inspected = spreadOf("arrival.base-rate-inspected") ** 2 + spreadOf("arrival.inspected-through") ** 2;
  switch (rate.kind) {
    case "open":
      return open;
    case "busy":
      return open + spreadOf("arrival.busy-factor") ** 2;
    case "inspected":
      return inspected;
    case "unknown":
      return (open + inspected) / 4 + apart(source) ** 2 / 12;
  }
}

/** ln of the rates of lakes of the two kinds between which an unknown one lies. */
const apart = (source: Assumed) => Math.log(rateOfLakes("open", source) / rateOfLakes("inspected", source));
