import { at } from "../../lists.js";
import type { BoatDays } from "./boat-days.js";

/** Sums over the boats of each drawn day. Tables by hour hold day × open hours + hour of arrival. */
export interface ServedDays {
  readonly days: BoatDays;
  readonly inspectors: number;
  readonly boats: Float64Array;
  readonly waitHours: Float64Array;
  /** Boats that waited longer than the target. */
  readonly boatsOver: Float64Array;
  /** By day: the longest wait. */
  readonly longestWaitHours: Float64Array;
  /** By day: boats whose service began after closing. */
  readonly servedAfterClosing: Float64Array;
  /** By day: inspectors' hours of service after closing; who has no boat left goes home. */
  readonly hoursAfterClosing: Float64Array;
  /** By day: inspectors' hours of service in all. */
  readonly busyHours: Float64Array;
}

/**
 * Serves the boats of drawn days, first come first served: a boat is taken by the inspector who is free first, at
 * the later of that moment and its arrival (Kiefer and Wolfowitz's recursion; from memory). All who came before
 * closing are served. With the same boats one more inspector makes no boat wait longer.
 * @throws RangeError if the number of inspectors is no whole number from 1
 */
export function serveDays(days: BoatDays, inspectors: number, targetHours: number): ServedDays {
  if (!Number.isSafeInteger(inspectors) || inspectors < 1) {
    throw new RangeError(`number of inspectors is ${inspectors}; allowed whole numbers from 1`);
  }
  const { replications, openHours } = days;
  const perDay = () => new Float64Array(replications);
  const perHour = () => new Float64Array(replications * openHours);
  const served: ServedDays = {
    days,
    inspectors,
    boats: perHour(),
    waitHours: perHour(),
    boatsOver: perHour(),
    longestWaitHours: perDay(),
    servedAfterClosing: perDay(),
    hoursAfterClosing: perDay(),
    busyHours: perDay(),
  };
  for (let day = 0; day < replications; day++) serveDay(served, day, targetHours);
  return served;
}

function serveDay(served: ServedDays, day: number, targetHours: number): void {
  const { openHours, arrivalHours, serviceHours, firstBoat } = served.days;
  /** When each inspector is free, the first at the front. */
  const freeAt = new Float64Array(served.inspectors);
  let longest = 0;
  let late = 0;
  let busy = 0;
  const end = at(firstBoat, day + 1);
  for (let boat = at(firstBoat, day); boat < end; boat++) {
    const arrival = at(arrivalHours, boat);
    const service = at(serviceHours, boat);
    const start = Math.max(arrival, at(freeAt, 0));
    const wait = start - arrival;
    const hour = day * openHours + Math.min(Math.floor(arrival), openHours - 1);
    served.boats[hour] = at(served.boats, hour) + 1;
    served.waitHours[hour] = at(served.waitHours, hour) + wait;
    if (wait > targetHours) served.boatsOver[hour] = at(served.boatsOver, hour) + 1;
    if (wait > longest) longest = wait;
    if (start > openHours) late++;
    busy += service;
    occupyFirst(freeAt, start + service);
  }
  served.longestWaitHours[day] = longest;
  served.servedAfterClosing[day] = late;
  served.busyHours[day] = busy;
  served.hoursAfterClosing[day] = freeAt.reduce((sum, free) => sum + Math.max(0, free - openHours), 0);
}

/** Takes the first inspector until a moment, and puts him back in order. */
function occupyFirst(freeAt: Float64Array, until: number): void {
  let place = 0;
  for (; place + 1 < freeAt.length; place++) {
    const next = at(freeAt, place + 1);
    if (next >= until) break;
    freeAt[place] = next;
  }
  freeAt[place] = until;
}

/** Sum of a table by hour over each day's hours from `fromHour` on. */
export function dayTotals({ days }: ServedDays, table: Float64Array, fromHour: number): Float64Array {
  const { openHours, replications } = days;
  return Float64Array.from({ length: replications }, (_, day) =>
    table.subarray(day * openHours + fromHour, (day + 1) * openHours).reduce((sum, each) => sum + each, 0),
  );
}

/** Mean over the days of a table by hour, in one open hour. */
export function hourMean({ days }: ServedDays, table: Float64Array, hour: number): number {
  let sum = 0;
  for (let day = 0; day < days.replications; day++) sum += at(table, day * days.openHours + hour);
  return sum / days.replications;
}
