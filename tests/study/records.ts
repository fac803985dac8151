import { expect } from "vitest";
import type { RecordProblem } from "../../src/study/reading/contradiction.js";
import {
  type LevelRecord,
  type RecordSettings,
  readLevelRecord,
} from "../../src/study/reading/levels/level-record.js";
import { parseQuantity } from "../../src/units/quantity.js";

const millisecondsPerDay = 24 * 3600 * 1000;

/** Days from one date to another, both included, as the calendar of the computer has them. */
export function datesFrom(first: string, last: string): string[] {
  const start = Date.parse(first);
  const days = (Date.parse(last) - start) / millisecondsPerDay + 1;
  return Array.from({ length: days }, (_, day) =>
    new Date(start + day * millisecondsPerDay).toISOString().slice(0, 10),
  );
}

/** The months from January of one year to December of another. */
export const monthsFrom = (first: number, last: number): string[] => [
  ...new Set(datesFrom(`${first}-01-01`, `${last}-12-31`).map((date) => date.slice(0, 7))),
];

export const metres = "date,elevation (m)";

export const csvOf = (
  dates: readonly string[],
  levelOn: (date: string, index: number) => string | number,
  header = metres,
): string => `${[header, ...dates.map((date, index) => `${date},${levelOn(date, index)}`)].join("\n")}\n`;

const limits: RecordSettings = {
  fillGapsUpTo: 0,
  minimumElevation: parseQuantity("80 m", "elevation"),
  maximumElevation: parseQuantity("120 m", "elevation"),
};

/** Reads a record of a lake from 80 m to 120 m. */
export function recordIn(csv: string, settings: Partial<RecordSettings> = {}): LevelRecord {
  const reading = readLevelRecord(csv, { ...limits, ...settings });
  if (!reading.record) throw new Error(JSON.stringify(reading.problems));
  return reading.record;
}

export function problemsOfRecord(
  csv: string,
  settings: Partial<RecordSettings> = {},
): readonly RecordProblem[] {
  const reading = readLevelRecord(csv, { ...limits, ...settings });
  expect(reading.record).toBeUndefined();
  return reading.record ? [] : reading.problems;
}
