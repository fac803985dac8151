import { at } from "../../../src/lists.js";
import { type Estimate, meanEstimate, ratioEstimate } from "../../../src/model/program/estimate.js";
import { dayTotals, type ServedDays } from "../../../src/model/program/queue-simulation.js";

/** Means over the drawn days. */
interface QueueSummary {
  readonly boatsPerDay: Estimate;
  /** Of all boats, also those that did not wait. */
  readonly meanWaitHours: Estimate;
  readonly shareOverTarget: Estimate;
  /** Mean of the days' longest waits. */
  readonly longestWaitHours: Estimate;
  readonly servedAfterClosing: Estimate;
  readonly hoursAfterClosing: Estimate;
  /** Share of the inspectors' open hours that is service. */
  readonly utilisation: Estimate;
}

/**
 * Means and standard errors over the days.
 * @param fromHour counts only boats that arrive in this open hour or later, for the three figures on boats
 */
export function summarise(served: ServedDays, fromHour = 0): QueueSummary {
  const boats = dayTotals(served, served.boats, fromHour);
  const offered = served.inspectors * served.days.openHours;
  const inOpenHours = served.busyHours.map((busy, day) => busy - at(served.hoursAfterClosing, day));
  return {
    boatsPerDay: meanEstimate(boats),
    meanWaitHours: ratioEstimate(dayTotals(served, served.waitHours, fromHour), boats),
    shareOverTarget: ratioEstimate(dayTotals(served, served.boatsOver, fromHour), boats),
    longestWaitHours: meanEstimate(served.longestWaitHours),
    servedAfterClosing: meanEstimate(served.servedAfterClosing),
    hoursAfterClosing: meanEstimate(served.hoursAfterClosing),
    utilisation: meanEstimate(inOpenHours.map((busy) => busy / offered)),
  };
}
