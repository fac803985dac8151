import type { RecordProblem } from "./contradiction.js";
import { type CsvLine, firstProblems } from "./csv-lines.js";
import { csvTable } from "./csv-table.js";
import {
  holdsCounts,
  problemsOfHeader,
  type SeasonCounts,
  seasonColumns,
  seasonCounts,
} from "./season-rows.js";

/** The sums of a class over the seasons of a log. */
type ClassCounts = Omit<SeasonCounts, "line" | "season">;

export interface SeasonLog {
  readonly rows: readonly SeasonCounts[];
  /** In order of first mention. */
  readonly classes: readonly ClassCounts[];
  /** The seasons worked, oldest first. */
  readonly seasons: readonly number[];
}

/** A log, or its problems. */
export type SeasonReading =
  | { readonly log: SeasonLog }
  | { readonly log?: undefined; readonly problems: readonly RecordProblem[] };

const mostLines = 5000;

/**
 * Reads a log of seasons worked: a header with the columns season, class, screened, setAside and fouled in any
 * order, and a line for each class in each season.
 * @param classIds the vessel classes of the study
 */
export function readSeasonLog(csv: string, classIds: readonly string[]): SeasonReading {
  const table = csvTable(csv, mostLines + 2, holdsCounts);
  if ("found" in table) return { problems: [table] };
  const { head: header, body } = table;
  if (!header || body.length === 0 || body.length > mostLines)
    return { problems: [sizeProblem(header, body)] };
  const headerProblems = problemsOfHeader(header);
  if (headerProblems.length > 0) return { problems: firstProblems(headerProblems) };
  const read = body.map((line) => seasonCounts(line, header.cells, classIds));
  const rows = read.flatMap(({ row }) => (row ? [row] : []));
  const problems = [...read.flatMap((each) => each.problems), ...repeated(rows)];
  if (problems.length > 0) {
    return { problems: firstProblems(problems.sort((one, other) => (one.line ?? 0) - (other.line ?? 0))) };
  }
  const seasons = [...new Set(rows.map(({ season }) => season))].sort((one, other) => one - other);
  return { log: { rows, classes: sumsByClass(rows), seasons } };
}

function sizeProblem(header: CsvLine | undefined, body: readonly CsvLine[]): RecordProblem {
  if (body.length > 0) {
    const allowed = `at most ${mostLines} lines, one for each class in each season`;
    return { found: `more than ${mostLines} lines`, allowed, remedy: "Sum the log by season and class." };
  }
  return {
    found: header ? "no season" : "nothing",
    allowed: `CSV text that begins with ${seasonColumns.join(",")}, and a line for each class in each season`,
    remedy: "Add the log.",
  };
}

function repeated(rows: readonly SeasonCounts[]): RecordProblem[] {
  const first = new Map<string, number>();
  return rows.flatMap(({ line, season, vesselClass }) => {
    const key = `${season} ${vesselClass}`;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, line);
      return [];
    }
    const found = `"${vesselClass}" in ${season} a second time, first in line ${before}`;
    return [{ line, found, allowed: "each class once in a season", remedy: "Sum the two lines." }];
  });
}

function sumsByClass(rows: readonly SeasonCounts[]): ClassCounts[] {
  const sums = new Map<string, ClassCounts>();
  for (const { vesselClass, ...row } of rows) {
    const sum = sums.get(vesselClass);
    sums.set(vesselClass, {
      vesselClass,
      screened: (sum?.screened ?? 0) + row.screened,
      setAside: (sum?.setAside ?? 0) + row.setAside,
      fouled: (sum?.fouled ?? 0) + row.fouled,
    });
  }
  return [...sums.values()];
}
