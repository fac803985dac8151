import { columnReader, QuantityError } from "../units/quantity.js";
import type { RecordProblem } from "./contradiction.js";
import { describe } from "./problems.js";

/** Where a record holds what, and how its levels are read. */
export interface LevelColumns {
  readonly names: readonly string[];
  readonly date: number;
  readonly elevation: number;
  readonly unit: string;
  /** A level as typed, in m. */
  readonly read: (text: string) => number;
}

export const headerExample = '"date,elevation (ft)" or "date,elevation [m]"';

const datePattern = /^date$/i;
const elevationPattern = /^elevation\s*(?:\(([^()]*)\)|\[([^[\]]*)\])?$/i;

/** The columns that a header names, or what is wrong with it. */
export function levelColumns(names: readonly string[]): LevelColumns | readonly RecordProblem[] {
  if (names.length === 1) {
    return [header(describe(names[0]), `two names with a comma between, such as ${headerExample}`)];
  }
  const unknown = names.filter((name) => !datePattern.test(name) && !elevationPattern.test(name));
  const problems = [
    ...unknown.map((name) => ({
      found: `a column ${describe(name)}`,
      allowed: "a date and an elevation column, and no other",
      remedy: "Take this column out.",
    })),
    ...countProblems(names, datePattern, "a date column, named date"),
    ...countProblems(names, elevationPattern, "an elevation column with its unit, such as elevation (ft)"),
  ];
  if (problems.length > 0) return problems;
  const [date, elevation] = [datePattern, elevationPattern].map((pattern) =>
    names.findIndex((name) => pattern.test(name)),
  ) as [number, number];
  return withUnit({ names, date, elevation });
}

function countProblems(names: readonly string[], pattern: RegExp, allowed: string): RecordProblem[] {
  const { length } = names.filter((name) => pattern.test(name));
  if (length === 1) return [];
  return [header(length === 0 ? "no such column" : `${length} such columns`, allowed)];
}

function withUnit(
  columns: Pick<LevelColumns, "names" | "date" | "elevation">,
): LevelColumns | readonly RecordProblem[] {
  const name = columns.names[columns.elevation] ?? "";
  const [, round, square] = elevationPattern.exec(name) ?? [];
  const unit = (round ?? square ?? "").trim();
  try {
    return { ...columns, unit, read: columnReader(unit, "elevation") };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return [
      header(describe(name), 'the unit of an elevation in brackets: "elevation (ft)" or "elevation [m]"'),
    ];
  }
}

const header = (found: string, allowed: string): RecordProblem => ({
  found,
  allowed,
  remedy: "Correct the header.",
});
