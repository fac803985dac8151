import type { RecordProblem } from "./contradiction.js";
import type { CsvLine } from "./csv-lines.js";
import type { TableLine } from "./csv-table.js";
import { describe } from "./problems.js";

/** Counts of one vessel class in one season. */
export interface SeasonCounts {
  readonly line: number;
  readonly season: number;
  readonly vesselClass: string;
  readonly screened: number;
  /** Screened boats set aside for a full inspection. */
  readonly setAside: number;
  /** Screened boats found with mussels, alive or dead. */
  readonly fouled: number;
}

const counts = ["screened", "setAside", "fouled"] as const;
export const seasonColumns = ["season", "class", ...counts] as const;
/** Whether a column of that name holds counts. */
export const holdsCounts = (name: string): boolean => counts.some((column) => column === name);

type Column = (typeof seasonColumns)[number];

/** Problems of a log's header. */
export function problemsOfHeader({ line, cells }: CsvLine): RecordProblem[] {
  const allowed = `the columns ${seasonColumns.join(", ")}, each once, with commas, semicolons or tabs between`;
  const remedy = "Correct the header.";
  if (cells.length === 1) return [{ line, found: describe(cells[0]), allowed, remedy }];
  const unknown = cells.filter((name) => !seasonColumns.some((column) => column === name));
  const wrong = seasonColumns.filter((column) => cells.filter((name) => name === column).length !== 1);
  return [
    ...unknown.map((name) => ({ line, found: `a column ${describe(name)}`, allowed, remedy })),
    ...wrong.map((column) => ({
      line,
      found: cells.includes(column) ? `"${column}" more than once` : `no column "${column}"`,
      allowed,
      remedy,
    })),
  ];
}

/** The counts in a line of a log, or its problems. */
export function seasonCounts(
  { line, cells, problem }: TableLine,
  header: readonly string[],
  classIds: readonly string[],
): { readonly row?: SeasonCounts; readonly problems: readonly RecordProblem[] } {
  if (problem) return { problems: [problem] };
  const text = (column: Column) => cells[header.indexOf(column)] ?? "";
  const [season, screened, setAside, fouled] = [text("season"), ...counts.map(text)].map(wholeNumber);
  const problems = [
    ...(season !== undefined && isYear(season) ? [] : [cell(line, "season", text, "a year such as 2024")]),
    ...(classIds.includes(text("class"))
      ? []
      : [cell(line, "class", text, `a vessel class of the study: ${classIds.join(", ")}`)]),
    ...counts.flatMap((column) =>
      wholeNumber(text(column)) === undefined
        ? [cell(line, column, text, 'a whole number of boats such as 1404 or "1,404"')]
        : [],
    ),
    ...moreThanScreened(line, screened, { setAside, fouled }),
  ];
  if (problems.length > 0 || season === undefined) return { problems };
  if (screened === undefined || setAside === undefined || fouled === undefined) return { problems };
  return { row: { line, season, vesselClass: text("class"), screened, setAside, fouled }, problems };
}

const wholeNumberText = /^(\d{1,9}|\d{1,3}(,\d{3}){1,2})$/;

const wholeNumber = (text: string): number | undefined =>
  wholeNumberText.test(text) ? Number(text.replaceAll(",", "")) : undefined;

const isYear = (season: number): boolean => season >= 1900 && season <= 2100;

function cell(
  line: number,
  column: Column,
  text: (column: Column) => string,
  allowed: string,
): RecordProblem {
  const value = text(column);
  const found = `${column} ${value === "" ? "nothing" : describe(value)}`;
  return { line, found, allowed, remedy: value === "" ? "Add it." : "Correct this value." };
}

function moreThanScreened(
  line: number,
  screened: number | undefined,
  parts: Readonly<Record<"setAside" | "fouled", number | undefined>>,
): RecordProblem[] {
  if (screened === undefined) return [];
  return (["setAside", "fouled"] as const).flatMap((column) => {
    const count = parts[column];
    if (count === undefined || count <= screened) return [];
    return [
      {
        line,
        found: `${column} ${count} of ${screened} screened`,
        allowed: `no more than were screened`,
        remedy: "Correct the count that is wrong.",
      },
    ];
  });
}
