import { at, noElement } from "../../lists.js";
import { daysInYear, daysOf, monthStart, months } from "./calendar.js";
import type { LevelPoint } from "./lake.js";

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
  const daily: number[] = [];
  let passed = 0;
  for (let day = 0; day < daysInYear; day++) {
    while (passed < points.length && at(points, passed).dayOfYear <= day) passed++;
    const previous = at(points, (passed || points.length) - 1);
    daily.push(elevationOn(day, previous, at(points, passed % points.length)));
  }
  return daily;
}

function elevationOn(day: number, previous: LevelPoint, next: LevelPoint): number {
  const span = (next.dayOfYear - previous.dayOfYear + daysInYear) % daysInYear || daysInYear;
  const passed = (day - previous.dayOfYear + daysInYear) % daysInYear;
  return previous.elevation + ((next.elevation - previous.elevation) * passed) / span;
}

/** Dry runs of the year at an elevation: the days in a row with z(d) < e; a run over New Year is one run, and the last. */
export function dryRuns(daily: readonly number[], elevation: number): DryRun[] {
  const runs: DryRun[] = [];
  let days = 0;
  for (let day = 0; day < daysInYear; day++) {
    if ((daily[day] ?? noElement(daily, day)) < elevation) days += 1;
    else if (days > 0) {
      runs.push({ startDay: day - days, days });
      days = 0;
    }
  }
  const afterNewYear = runs[0]?.startDay === 0 ? (runs.shift()?.days ?? 0) : 0;
  if (days + afterNewYear > 0)
    runs.push({ startDay: (daysInYear - days) % daysInYear, days: days + afterNewYear });
  return runs;
}

/** Levels of one year. */
export interface LevelsOfYear {
  readonly daily: readonly number[];
  /** Mean of each month. */
  readonly monthly: readonly number[];
}

export const levelsOfYear = (daily: readonly number[]): LevelsOfYear => ({
  daily,
  monthly: monthlyMeans(daily),
});

/** Mean of the daily elevations in each month. */
export function monthlyMeans(daily: readonly number[]): number[] {
  return months.map((month) => {
    const start = monthStart(month);
    const days = daysOf(month);
    let total = 0;
    for (let day = start; day < start + days; day++) total += daily[day] ?? noElement(daily, day);
    return total / days;
  });
}

/** Share of each month in which the elevation is under water. */
export function wettedShares(daily: readonly number[], elevation: number): number[] {
  return months.map((month) => {
    const start = monthStart(month);
    const days = daysOf(month);
    let wet = 0;
    for (let day = start; day < start + days; day++)
      if ((daily[day] ?? noElement(daily, day)) >= elevation) wet += 1;
    return wet / days;
  });
}

/** The band that the schedule lays bare: lowest and highest level of the year. */
export function exposedBand(daily: readonly number[]): { lowest: number; highest: number } {
  let lowest = Infinity;
  let highest = -Infinity;
  for (let day = 0; day < daily.length; day++) {
    const level = daily[day] ?? noElement(daily, day);
    if (level < lowest) lowest = level;
    if (level > highest) highest = level;
  }
  return { lowest, highest };
}
