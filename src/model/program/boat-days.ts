import { hoursPerDay } from "../lake/calendar.js";
import { randomStream } from "../random/generator.js";
import type { ServiceTimes } from "./service-time.js";

/** A day at a station. */
export interface StationDay {
  /** Keys the random draws: the same seed and id always give the same boats. */
  readonly id: string;
  /** Boats expected in each open hour, from opening to closing; 1 to 24 hours. */
  readonly arrivalsByHour: readonly number[];
  readonly service: ServiceTimes;
}

export interface Sampling {
  /** How many days are drawn; 2 or more, since a standard error needs two. */
  readonly replications: number;
  readonly seed: number;
}

/** Boats of many such days, one day after the other, each day's in order of arrival. */
export interface BoatDays {
  readonly replications: number;
  readonly openHours: number;
  /** Index of the first boat of each day, and at the end the number of all boats. */
  readonly firstBoat: readonly number[];
  /** Hours after opening. */
  readonly arrivalHours: Float64Array;
  /** Hours of one inspector. */
  readonly serviceHours: Float64Array;
}

/**
 * Draws days: Poisson arrivals whose rate is constant within each hour, and what each boat takes. Neither depends
 * on the number of inspectors, so that all numbers can be judged by the same boats (common random numbers).
 * @throws RangeError if hours, arrivals, service or replications have no meaning
 */
export function sampleBoatDays(day: StationDay, { replications, seed }: Sampling): BoatDays {
  requireStationDay(day);
  if (!Number.isSafeInteger(replications) || replications < 2) {
    throw new RangeError(`${day.id}: replications are ${replications}; allowed whole numbers from 2`);
  }
  const gaps = randomStream(seed, `${day.id}/arrivals`);
  const firstBoat = [0];
  const arrivals: number[] = [];
  for (let replication = 0; replication < replications; replication++) {
    addArrivals(day.arrivalsByHour, () => gaps.exponential(1), arrivals);
    firstBoat.push(arrivals.length);
  }
  return {
    replications,
    openHours: day.arrivalsByHour.length,
    firstBoat,
    arrivalHours: Float64Array.from(arrivals),
    serviceHours: drawServices(day, seed, arrivals.length),
  };
}

/**
 * A Poisson process of varying rate λ is one of rate 1 in the time Λ(t) = ∫λ dt; Λ is straight within an hour, and
 * so is its inverse.
 */
function addArrivals(arrivalsByHour: readonly number[], gap: () => number, arrivals: number[]): void {
  let clock = gap();
  let before = 0;
  for (const [hour, expected] of arrivalsByHour.entries()) {
    const after = before + expected;
    for (; clock < after; clock += gap()) arrivals.push(hour + (clock - before) / expected);
    before = after;
  }
}

/** Three draws for each boat, used or not, so that another share or spread leaves all other draws alone. */
function drawServices({ id, service }: StationDay, seed: number, boats: number): Float64Array {
  const { quickCheckHours, fullInspectionHours, setAsideShare, spread } = service;
  const stream = randomStream(seed, `${id}/services`);
  const hours = new Float64Array(boats);
  for (let boat = 0; boat < boats; boat++) {
    const isSetAside = stream.uniform() < setAsideShare;
    const quick = stream.exponential(quickCheckHours);
    const full = stream.exponential(fullInspectionHours);
    hours[boat] =
      spread === "exponential"
        ? quick + (isSetAside ? full : 0)
        : quickCheckHours + (isSetAside ? fullInspectionHours : 0);
  }
  return hours;
}

/** @throws RangeError naming the day and the number that has no meaning */
export function requireStationDay({ id, arrivalsByHour, service }: StationDay): void {
  const hours = arrivalsByHour.length;
  if (hours < 1 || hours > hoursPerDay) {
    throw new RangeError(`${id}: ${hours} open hours; allowed 1 to ${hoursPerDay}`);
  }
  for (const [hour, expected] of arrivalsByHour.entries()) {
    requireWithin(`${id}: arrivals in open hour ${hour + 1}`, expected, Number.MAX_VALUE);
  }
  if (arrivalsByHour.every((expected) => expected === 0)) {
    throw new RangeError(`${id}: no arrivals in any hour; leave out a day on which no boat is expected`);
  }
  requireWithin(`${id}: quick check in hours`, service.quickCheckHours, Number.MAX_VALUE);
  requireWithin(`${id}: full inspection in hours`, service.fullInspectionHours, Number.MAX_VALUE);
  requireWithin(`${id}: share set aside`, service.setAsideShare, 1);
}

function requireWithin(what: string, value: number, most: number): void {
  if (value >= 0 && value <= most) return;
  const allowed = most === Number.MAX_VALUE ? "numbers from 0" : `0 to ${most}`;
  throw new RangeError(`${what} is ${value}; allowed ${allowed}`);
}
