import { QuantityError } from "../../../units/quantity.js";
import type { RecordProblem } from "../contradiction.js";
import { type CsvLine, firstProblems } from "../csv-lines.js";
import { csvTable, type TableLine } from "../csv-table.js";
import { formTexts, type RecordDate, readDate } from "../level-dates.js";
import { describe } from "../problems.js";
import { headerExample, isElevation, type LevelColumns, levelColumns } from "./level-columns.js";

/** A line with a sound date. */
export interface LevelRow {
  readonly line: number;
  readonly date: RecordDate;
  /** Level as typed, with the unit of its column. */
  readonly text: string;
  /** In m; absent if the cell holds no number. */
  readonly elevation: number | undefined;
  /** True if the line before has no sound date. */
  readonly followsUndated: boolean;
}

interface LevelRows {
  readonly rows: readonly LevelRow[];
  readonly problems: readonly RecordProblem[];
}

export const mostYears = 100;
const mostLines = mostYears * 366 + 1;

/** Lines of a CSV text, one level per date, and the problems of malformed ones. */
export function readLevelRows(csv: string): LevelRows {
  const table = csvTable(csv, mostLines + 1, isElevation);
  if ("found" in table) return { rows: [], problems: [table] };
  const { head: header, body } = table;
  if (!header || body.length >= mostLines) return { rows: [], problems: [sizeProblem(header)] };
  const columns = levelColumns(header.cells);
  if ("read" in columns) return rowsOf(body, columns);
  return { rows: [], problems: firstProblems(columns.map((problem) => ({ ...problem, line: header.line }))) };
}

function sizeProblem(header: CsvLine | undefined): RecordProblem {
  return header
    ? {
        found: `more than ${mostLines} lines`,
        allowed: `at most ${mostYears} years of days`,
        remedy: "Leave out the earliest years.",
      }
    : {
        found: "nothing",
        allowed: `CSV text that begins with ${headerExample}`,
        remedy: "Add the record.",
      };
}

function rowsOf(body: readonly TableLine[], columns: LevelColumns): LevelRows {
  const rows: LevelRow[] = [];
  const problems: RecordProblem[] = [];
  let followsUndated = false;
  for (const { line, cells, typed, problem } of body) {
    const date = problem ?? dateOf(cells, columns, rows[0]);
    if ("allowed" in date) problems.push({ line, ...date });
    else {
      const level = levelOf(cells[columns.elevation] ?? "", columns);
      if ("allowed" in level) problems.push({ line, ...level });
      rows.push({
        line,
        date,
        text: `${typed[columns.elevation]} ${columns.unit}`,
        elevation: "allowed" in level ? undefined : level.elevation,
        followsUndated,
      });
    }
    followsUndated = "allowed" in date;
  }
  return { rows, problems };
}

function dateOf(
  cells: readonly string[],
  columns: LevelColumns,
  first: LevelRow | undefined,
): RecordDate | RecordProblem {
  const text = cells[columns.date] ?? "";
  const found = text === "" ? "nothing" : describe(text);
  const date = readDate(text);
  if ("allowed" in date) return { found, allowed: date.allowed, remedy: "Correct the date." };
  if (first && first.date.form !== date.form) {
    const allowed = `a date written ${formTexts[first.date.form]}, as in line ${first.line}`;
    return { found, allowed, remedy: "Use days or months throughout." };
  }
  return date;
}

function levelOf(text: string, { read, unit }: LevelColumns): { elevation: number } | RecordProblem {
  try {
    return { elevation: read(text) };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return {
      found: text === "" ? "nothing" : describe(text),
      allowed: `${error.message}, in ${unit}`,
      remedy: "Correct the level, or take the line out and let fillGapsUpTo join its neighbours.",
    };
  }
}
