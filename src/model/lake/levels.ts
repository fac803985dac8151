import type { LevelPoint } from "../inputs.js";
import { at, daysInYear, monthOfDay, months } from "./calendar.js";

/** A contiguous stretch of days in which an elevation lies above the water; it may pass the year's end. */
export interface DryRun {
  readonly startDay: number;
  readonly days: number;
}

/**
 * Daily lake elevation over the operating year: the schedule's points joined linearly and cyclically,
 * z = z1 + (z2 − z1)·(d − d1)/(d2 − d1).
 * @param points in order of date, at least one
 * @returns 365 elevations, m, from 1 January
 */
export function dailyElevations(points: readonly LevelPoint[]): number[] {
  return Array.from({ length: daysInYear }, (_, day) => elevationOn(day, points));
}

function elevationOn(day: number, points: readonly LevelPoint[]): number {
  const nextIndex = points.findIndex((point) => point.dayOfYear > day);
  const next = at(points, nextIndex === -1 ? 0 : nextIndex);
  const previous = at(points, (nextIndex === -1 ? points.length : nextIndex || points.length) - 1);
  const span = (next.dayOfYear - previous.dayOfYear + daysInYear) % daysInYear || daysInYear;
  const passed = (day - previous.dayOfYear + daysInYear) % daysInYear;
  return previous.elevation + ((next.elevation - previous.elevation) * passed) / span;
}

/** Dry runs of the year at an elevation: the days in a row with z(d) < e; a run over New Year is one run. */
export function dryRuns(daily: readonly number[], elevation: number): DryRun[] {
  const dry = daily.map((level) => level < elevation);
  const firstWet = dry.indexOf(false);
  if (firstWet === -1) return [{ startDay: 0, days: daysInYear }];
  const runs: { startDay: number; days: number }[] = [];
  for (let step = 0; step < daysInYear; step++) {
    const day = (firstWet + step) % daysInYear;
    if (!at(dry, day)) continue;
    const last = runs.at(-1);
    if (last && (last.startDay + last.days) % daysInYear === day) last.days += 1;
    else runs.push({ startDay: day, days: 1 });
  }
  return runs;
}

/** Mean of the daily elevations in each month. */
export function monthlyMeans(daily: readonly number[]): number[] {
  const sums = months.map(() => ({ total: 0, days: 0 }));
  daily.forEach((level, day) => {
    const month = at(sums, monthOfDay(day));
    month.total += level;
    month.days += 1;
  });
  return sums.map(({ total, days }) => total / days);
}

/** Share of each month in which the elevation is under water. */
export function wettedShares(daily: readonly number[], elevation: number): number[] {
  return monthlyMeans(daily.map((level) => (level < elevation ? 0 : 1)));
}

/** The band that the schedule lays bare: lowest and highest level of the year. */
export function exposedBand(daily: readonly number[]): { lowest: number; highest: number } {
  return { lowest: Math.min(...daily), highest: Math.max(...daily) };
}
