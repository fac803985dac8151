import { columnReader, QuantityError } from "../../../units/quantity.js";
import type { RecordProblem } from "../contradiction.js";
import { describe } from "../problems.js";

/** The columns of a record, and the reader of its levels. */
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
/** Longest name of a column; no pattern is tried on a longer one. */
const longestName = 100;
const elevationPattern = /^elevation\s*(?:\(([^()]*)\)|\[([^[\]]*)\])?$/i;

export const isElevation = (name: string): boolean =>
  name.length <= longestName && elevationPattern.test(name);

const isDate = (name: string): boolean => datePattern.test(name);

/** The columns named by a header, or its problems. */
export function levelColumns(names: readonly string[]): LevelColumns | readonly RecordProblem[] {
  if (names.length === 1) {
    return [
      header(
        describe(names[0]),
        `two names with a comma, semicolon or tab between, such as ${headerExample}`,
      ),
    ];
  }
  const unknown = names.filter((name) => !isDate(name) && !isElevation(name));
  const problems = [
    ...unknown.map((name) => ({
      found: `a column ${describe(name)}`,
      allowed: "a date and an elevation column, and no other",
      remedy: "Take this column out.",
    })),
    ...countProblems(names, isDate, "a date column, named date"),
    ...countProblems(names, isElevation, "an elevation column with its unit, such as elevation (ft)"),
  ];
  if (problems.length > 0) return problems;
  return withUnit({ names, date: names.findIndex(isDate), elevation: names.findIndex(isElevation) });
}

function countProblems(
  names: readonly string[],
  isSuch: (name: string) => boolean,
  allowed: string,
): RecordProblem[] {
  const { length } = names.filter(isSuch);
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
