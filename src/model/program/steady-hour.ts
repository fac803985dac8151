import { queueAt, type SteadyQueue } from "./erlang-c.js";
import { meanServiceHours, type ServiceTimes, squaredVariation } from "./service-time.js";

/** Why Erlang C does not hold in an hour. */
export type NotSteady = "service-not-exponential" | "overloaded" | "slow-to-settle";

export type HourState =
  | { readonly kind: "steady"; readonly utilisation: number; readonly queue: SteadyQueue }
  | { readonly kind: "not-steady"; readonly utilisation: number; readonly because: NotSteady };

/** Within this of 1, a squared variation moves the mean wait by about half as much (Allen and Cunneen; from memory). */
const variationTolerance = 1 / 10;
/** A queue that settles in a tenth of an hour carries about a tenth of a change between hours into an hour's mean. */
const relaxationTimesPerHour = 10;

/**
 * An hour is steady if service is close to exponential (exponential times, and a squared coefficient of variation
 * within 1 ± 1/10 for all boats together), the work that arrives is less than the inspectors can do (a < c), and the
 * queue settles within a tenth of the hour.
 */
export function hourState(arrivalsPerHour: number, inspectors: number, service: ServiceTimes): HourState {
  const serviceHours = meanServiceHours(service);
  const queue = queueAt({ arrivalsPerHour, serviceHours, inspectors });
  const { utilisation } = queue;
  if (queue.kind === "overloaded") return { kind: "not-steady", utilisation, because: "overloaded" };
  if (serviceHours > 0 && !isNearExponential(service)) {
    return { kind: "not-steady", utilisation, because: "service-not-exponential" };
  }
  const settling = relaxationHours(arrivalsPerHour * serviceHours, inspectors, serviceHours);
  if (settling * relaxationTimesPerHour > 1) {
    return { kind: "not-steady", utilisation, because: "slow-to-settle" };
  }
  return { kind: "steady", utilisation, queue };
}

const isNearExponential = (service: ServiceTimes) =>
  service.spread === "exponential" && Math.abs(squaredVariation(service) - 1) <= variationTolerance;

/**
 * Relaxation time of M/M/c below capacity, s/(√c − √a)² near it and about s far below it, where a change dies out
 * as the boats in service leave: s/min(1, (√c − √a)²).
 * Source: Karlin and McGregor 1958, Many server queueing processes (from memory).
 */
export function relaxationHours(load: number, inspectors: number, serviceHours: number): number {
  return serviceHours / Math.min(1, (Math.sqrt(inspectors) - Math.sqrt(load)) ** 2);
}
