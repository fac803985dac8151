import { at } from "../../lists.js";
import { daysInYear } from "../lake/calendar.js";
import type { Lake, LevelPoint } from "../lake/lake.js";
import { dailyElevations } from "../lake/levels.js";

/** A drawdown below the levels of a year: the water falls, stays at the lowest level and is refilled. */
export interface Drawdown {
  readonly lowest: number;
  /** Day on which the lowest level is reached, and for how many days it is held. */
  readonly from: number;
  readonly days: number;
  /** Day on which the levels of the year are reached again. */
  readonly refilled: number;
  /** How fast it falls, m a day. */
  readonly fall: number;
}

/** Daily levels of each possible operating year. */
export const levelYears = ({ drawdown, record }: Pick<Lake, "drawdown" | "record">): (readonly number[])[] =>
  record ? record.map(({ daily }) => daily) : [dailyElevations(drawdown)];

/** Days from one day of the year to another. */
export const daysBetween = (from: number, to: number): number => (to - from + daysInYear) % daysInYear;

/**
 * Levels of a year with a drawdown: y(d) = min(z(d), t(d)), where t falls at its rate to the lowest level, keeps it, and
 * rises evenly to the level z of the day on which the lake is refilled.
 * @param levels z, by day
 */
export function drawnDown(levels: readonly number[], drawdown: Drawdown): number[] {
  const { lowest, from, days, refilled, fall } = drawdown;
  const rise = riseOf(levels, drawdown);
  const risingDays = daysBetween(from, refilled) - days;
  return levels.map((level, day) => {
    const since = daysBetween(from, day);
    if (since <= days) return Math.min(level, lowest);
    const falling = lowest + fall * (daysInYear - since);
    const rising = since - days <= risingDays ? lowest + rise * (since - days) : Number.POSITIVE_INFINITY;
    return Math.min(level, falling, rising);
  });
}

/** How fast it is refilled, m a day; 0 where it is refilled at once. */
export function riseOf(levels: readonly number[], { lowest, from, days, refilled }: Drawdown): number {
  const risingDays = daysBetween(from, refilled) - days;
  return risingDays > 0 ? Math.max(0, at(levels, refilled) - lowest) / risingDays : 0;
}

/** The fastest fall from one day to the next, m. */
export const fastestFall = (levels: readonly number[]): number =>
  Math.max(0, ...levels.map((level, day) => level - at(levels, (day + 1) % levels.length)));

/** Levels that differ by less, m, are the same. */
const least = 1e-9;

/** The fewest points that give the same levels when joined linearly. */
export function pointsOf(levels: readonly number[]): LevelPoint[] {
  const bends = levels.flatMap((elevation, dayOfYear) => {
    const before = at(levels, (dayOfYear - 1 + levels.length) % levels.length);
    const after = at(levels, (dayOfYear + 1) % levels.length);
    return Math.abs(after - 2 * elevation + before) > least ? [{ dayOfYear, elevation }] : [];
  });
  return bends.length > 0 ? bends : [{ dayOfYear: 0, elevation: at(levels, 0) }];
}

/** Whether two courses of levels are the same. */
export const isSameCourse = (one: readonly number[], other: readonly number[]): boolean =>
  one.every((level, day) => Math.abs(level - at(other, day)) <= least);
