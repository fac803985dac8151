import { at } from "../../../lists.js";
import { daysInYear } from "../../../model/lake/calendar.js";
import type { LevelYear } from "../../../model/lake/lake.js";
import type { Quantity } from "../../../units/quantity.js";
import { type AbovePool, daysAbove, rangeProblems } from "../../records/level-limits.js";
import type { RecordProblem } from "../contradiction.js";
import { firstProblems } from "../csv-lines.js";
import { type DateForm, dateText, dayText, yearOf } from "../level-dates.js";
import { type LevelRow, readLevelRows } from "./level-rows.js";
import {
  daysOfGap,
  type Gap,
  gapProblem,
  gapsIn,
  inOrder,
  orderProblems,
  spanProblems,
} from "./level-sequence.js";

/** Lake levels of several calendar years, parsed from CSV. */
export interface LevelRecord {
  readonly form: DateForm;
  /** Complete calendar years, at least one. */
  readonly years: readonly LevelYear[];
  /** Years that are not used: "1998 (from 1 Oct)" at the record's ends, "2004 (no level from …)" for a long gap. */
  readonly leftOut: readonly string[];
  /** Those of them that have a long gap. */
  readonly withGaps: readonly string[];
  /** Days of the complete years on which the lake stood above full pool; absent where there are none. */
  readonly above?: AbovePool | undefined;
  /** Days interpolated linearly across gaps; years without any are absent. */
  readonly filled: ReadonlyArray<{ readonly label: string; readonly days: number }>;
}

/** A record, or its problems. */
export type LevelReading =
  | { readonly record: LevelRecord }
  | { readonly record?: undefined; readonly problems: readonly RecordProblem[] };

export interface RecordSettings {
  /** Longest gap that is interpolated linearly, days. */
  readonly fillGapsUpTo: number;
  /** Limits of the lake; absent while a study gives none. */
  readonly minimumElevation: Quantity | undefined;
  readonly maximumElevation: Quantity | undefined;
}

/**
 * Reads a record of lake levels: a date and an elevation column with its unit in the header, one line a day
 * ("YYYY-MM-DD") or one line a month ("YYYY-MM", the month's mean).
 *
 * The model's year has 365 days: levels of 29 February are checked and then dropped. Monthly means are placed at
 * mid-month and interpolated linearly, also across the turn of the year; before the first and after the last
 * mid-month the level is constant. The mean of an interpolated month differs slightly from the mean given.
 *
 * A year with a gap longer than may be joined is left out; only where no year is whole are gaps a problem.
 */
export function readLevelRecord(csv: string, settings: RecordSettings): LevelReading {
  const { rows, problems: lineProblems } = readLevelRows(csv);
  const sorted = inOrder(rows);
  const problems = [
    ...lineProblems,
    ...orderProblems(rows),
    ...rangeProblems(rows, settings),
    ...spanProblems(sorted),
  ].sort((one, other) => (one.line ?? 0) - (other.line ?? 0));
  const gaps = gapsIn(sorted);
  const tooLong = gaps.filter((gap) => daysOfGap(gap) > settings.fillGapsUpTo);
  const gapProblems = tooLong.map((gap) => gapProblem(gap, settings.fillGapsUpTo));
  if (problems.length > 0) return { problems: firstProblems(problems) };
  const reading = recordOf(sorted, { gaps, tooLong }, settings);
  if (reading.record || gapProblems.length === 0) return reading;
  return { problems: firstProblems(gapProblems) };
}

interface Gaps {
  readonly gaps: readonly Gap[];
  /** Those that are not joined. */
  readonly tooLong: readonly Gap[];
}

/** Assembles sound rows into years. */
function recordOf(
  sorted: readonly LevelRow[],
  { gaps, tooLong }: Gaps,
  { maximumElevation }: RecordSettings,
): LevelReading {
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last) return { problems: [tooShort("no level")] };
  const [firstDay, lastDay] = [first.date.firstDay, last.date.lastDay];
  const all = Array.from(
    { length: yearOf(lastDay) - yearOf(firstDay) + 1 },
    (_, index) => yearOf(firstDay) + index,
  );
  const isWithin = (year: number) => firstDay <= year * daysInYear && lastDay >= (year + 1) * daysInYear - 1;
  const gapOf = (year: number) => tooLong.find((gap) => daysWithin(gap, year) > 0);
  const complete = all.filter((year) => isWithin(year) && !gapOf(year));
  const withGaps = all.filter(isWithin).flatMap((year) => {
    const gap = gapOf(year);
    return gap ? [gapText(year, gap, first.date.form)] : [];
  });
  const parts = all.filter((year) => !isWithin(year)).map((year) => partText(year, firstDay, lastDay));
  const leftOut = [...parts, ...withGaps].sort();
  if (complete.length === 0) return { problems: [tooShort(leftOut.join(", "))] };
  const levelOn = joined(sorted);
  const years = complete.map((year) => ({
    label: String(year),
    daily: Array.from({ length: daysInYear }, (_, day) => levelOn(year * daysInYear + day)),
  }));
  const above = daysAbove(years, maximumElevation);
  const filled = filledDays(gaps, complete);
  return { record: { form: first.date.form, years, leftOut, withGaps, filled, above } };
}

const tooShort = (found: string): RecordProblem => ({
  found,
  allowed: "at least one complete calendar year, 1 January to 31 December",
  remedy: "Add the missing part of a year.",
});

function partText(year: number, firstDay: number, lastDay: number): string {
  const from = yearOf(firstDay) === year && firstDay % daysInYear > 0 ? [`from ${dayText(firstDay)}`] : [];
  const to =
    yearOf(lastDay) === year && lastDay % daysInYear < daysInYear - 1 ? [`to ${dayText(lastDay)}`] : [];
  return `${year} (${[...from, ...to].join(" ")})`;
}

function gapText(year: number, { firstDay, lastDay }: Gap, form: DateForm): string {
  const [from, to] = [firstDay, lastDay].map((day) => dateText(day, form));
  return `${year} (no level ${from === to ? `on ${from}` : `from ${from} to ${to}`})`;
}

/** Days of a gap in a year. */
function daysWithin({ firstDay, lastDay }: Gap, year: number): number {
  const start = year * daysInYear;
  return Math.max(Math.min(lastDay, start + daysInYear - 1) - Math.max(firstDay, start) + 1, 0);
}

/** Level on a day, interpolated between the midpoints of the rows; days must be asked for in order. */
function joined(sorted: readonly LevelRow[]): (day: number) => number {
  const points = sorted.flatMap(({ date, elevation }) =>
    elevation === undefined ? [] : [{ day: (date.firstDay + date.lastDay) / 2, elevation }],
  );
  let next = 0;
  return (day) => {
    while (next < points.length && at(points, next).day < day) next += 1;
    const after = points[next];
    const before = points[next - 1];
    if (!after || !before || after.day === day) return (after ?? at(points, points.length - 1)).elevation;
    const share = (day - before.day) / (after.day - before.day);
    return before.elevation + (after.elevation - before.elevation) * share;
  };
}

function filledDays(gaps: readonly Gap[], years: readonly number[]): LevelRecord["filled"] {
  return years.flatMap((year) => {
    const days = gaps.reduce((sum, gap) => sum + daysWithin(gap, year), 0);
    return days > 0 ? [{ label: String(year), days }] : [];
  });
}
