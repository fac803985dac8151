import { at } from "../../lists.js";
import { daysInYear } from "../../model/lake/calendar.js";
import type { LevelYear } from "../../model/lake/lake.js";
import type { Quantity } from "../../units/quantity.js";
import type { RecordProblem } from "./contradiction.js";
import { firstProblems } from "./csv-lines.js";
import { type DateForm, dayText, yearOf } from "./level-dates.js";
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
  /** Incomplete years at the record's ends: "1998 (from 1 Oct)". */
  readonly leftOut: readonly string[];
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
  readonly minimumElevation: Quantity;
  readonly maximumElevation: Quantity;
}

/**
 * Reads a record of lake levels: a date and an elevation column with its unit in the header, one line a day
 * ("YYYY-MM-DD") or one line a month ("YYYY-MM", the month's mean).
 *
 * The model's year has 365 days: levels of 29 February are checked and then dropped. Monthly means are placed at
 * mid-month and interpolated linearly, also across the turn of the year; before the first and after the last
 * mid-month the level is constant. The mean of an interpolated month differs slightly from the mean given.
 */
export function readLevelRecord(csv: string, settings: RecordSettings): LevelReading {
  const { rows, problems: lineProblems } = readLevelRows(csv);
  const sorted = inOrder(rows);
  const gaps = gapsIn(sorted);
  const problems = [
    ...lineProblems,
    ...orderProblems(rows),
    ...rangeProblems(rows, settings),
    ...spanProblems(sorted),
    ...gaps
      .filter((gap) => daysOfGap(gap) > settings.fillGapsUpTo)
      .map((gap) => gapProblem(gap, settings.fillGapsUpTo)),
  ].sort((one, other) => (one.line ?? 0) - (other.line ?? 0));
  if (problems.length > 0) return { problems: firstProblems(problems) };
  return recordOf(sorted, gaps);
}

/** Rounding error between two conversions of one elevation, m. */
const roundingError = 1e-9;

function rangeProblems(
  rows: readonly LevelRow[],
  { minimumElevation, maximumElevation }: RecordSettings,
): RecordProblem[] {
  const [lowest, highest] = [minimumElevation.value - roundingError, maximumElevation.value + roundingError];
  return rows
    .filter(({ elevation }) => elevation !== undefined && (elevation < lowest || elevation > highest))
    .map(({ line, text }) => ({
      line,
      found: text,
      allowed: `an elevation from ${minimumElevation.text} to ${maximumElevation.text}, the limits of the lake`,
      remedy: "Correct the level, the unit in the header or the limits.",
    }));
}

/** Assembles sound rows into years. */
function recordOf(sorted: readonly LevelRow[], gaps: readonly Gap[]): LevelReading {
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last) return { problems: [tooShort("no level")] };
  const [firstDay, lastDay] = [first.date.firstDay, last.date.lastDay];
  const all = Array.from(
    { length: yearOf(lastDay) - yearOf(firstDay) + 1 },
    (_, index) => yearOf(firstDay) + index,
  );
  const isComplete = (year: number) =>
    firstDay <= year * daysInYear && lastDay >= (year + 1) * daysInYear - 1;
  const complete = all.filter(isComplete);
  const leftOut = all.filter((year) => !isComplete(year)).map((year) => partText(year, firstDay, lastDay));
  if (complete.length === 0) return { problems: [tooShort(leftOut.join(", "))] };
  const levelOn = joined(sorted);
  const years = complete.map((year) => ({
    label: String(year),
    daily: Array.from({ length: daysInYear }, (_, day) => levelOn(year * daysInYear + day)),
  }));
  return { record: { form: first.date.form, years, leftOut, filled: filledDays(gaps, complete) } };
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
    const start = year * daysInYear;
    const days = gaps.reduce((sum, { firstDay, lastDay }) => {
      const [from, to] = [Math.max(firstDay, start), Math.min(lastDay, start + daysInYear - 1)];
      return sum + Math.max(to - from + 1, 0);
    }, 0);
    return days > 0 ? [{ label: String(year), days }] : [];
  });
}
