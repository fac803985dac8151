import type { RecordProblem } from "../reading/contradiction.js";
import type { CsvLine } from "../reading/csv-lines.js";
import { describe } from "../reading/problems.js";
import { exportLines, isComment, type Separator, separators } from "./export-lines.js";

/** Largest file that is read: 200,000 lines of a log take some 15 MB. */
export const largestExportBytes = 48 * 1024 * 1024;
const mostLines = 1_000_000;

/** The values of the columns that were asked for, in their order; no other value of the line is kept. */
export interface ExportRow {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface ExportTable {
  readonly head: CsvLine;
  readonly separator: Separator;
  readonly rows: readonly ExportRow[];
  /** Lines that cannot be cut into values. */
  readonly faults: readonly RecordProblem[];
}

/** The head of a file: the first line that names all columns asked for, or the first that looks like one. */
export interface ExportHead {
  readonly head: CsvLine;
  readonly separator: Separator;
  readonly hasAll: boolean;
}

/** How much of a file is looked through for its head. */
const headText = 64 * 1024;
const headLines = 300;

/** Names of columns are the same whatever their case and blanks. */
export const sameName = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, " ");

/** A mapped column as the file writes its name. */
export const columnName = ({ cells }: CsvLine, mapped: string): string =>
  cells.find((cell) => sameName(cell) === sameName(mapped)) ?? mapped;

/** @returns undefined where no line looks like a head */
export function exportHead(text: string, wanted: readonly string[]): ExportHead | undefined {
  const start = text.slice(0, headText);
  const names = wanted.map(sameName);
  const samples = separators.map((separator) => ({ separator, lines: linesIn(start, separator) }));
  for (const { separator, lines } of samples) {
    const head = lines.find(({ cells }) => {
      const found = new Set(cells.map(sameName));
      return names.length > 0 && names.every((name) => found.has(name));
    });
    if (head) return { head, separator, hasAll: true };
  }
  const [best] = samples
    .map((sample) => ({ ...sample, regular: regularLines(sample.lines) }))
    .sort((one, other) => other.regular - one.regular);
  if (!best || best.regular === 0) return undefined;
  const { separator, lines } = best;
  const width = usualWidth(lines);
  const head = lines.find(
    ({ cells }) => cells.length === width && cells.filter((cell) => cell !== "").length > 1,
  );
  return head && { head, separator, hasAll: false };
}

function linesIn(text: string, separator: Separator): CsvLine[] {
  const lines: CsvLine[] = [];
  for (const line of exportLines(text, separator)) {
    if ("cells" in line) lines.push(line);
    if (lines.length >= headLines) break;
  }
  return lines;
}

/** The number of values that most lines have; 1 where no separator is in them. */
function usualWidth(lines: readonly CsvLine[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of lines) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [widest] = [...counts].sort(([, one], [, other]) => other - one);
  return widest?.[0] ?? 1;
}

function regularLines(lines: readonly CsvLine[]): number {
  const width = usualWidth(lines);
  return width < 2 ? 0 : lines.filter(({ cells }) => cells.length === width).length;
}

/** Values of the columns named, or why there are none. */
export function exportTable(text: string, wanted: readonly string[]): ExportTable | RecordProblem {
  if (text.trim() === "") {
    return {
      found: "an empty file",
      allowed: "a file with a line of column names and lines of values below it",
      remedy: "Export the file again.",
    };
  }
  const found = exportHead(text, wanted);
  if (!found?.hasAll) return missingColumns(found, wanted);
  const { head, separator } = found;
  const columns = columnsOf(head, wanted);
  if ("allowed" in columns) return columns;
  return { head, separator, ...rowsBelow(text, found, columns) };
}

function columnsOf({ line, cells }: CsvLine, wanted: readonly string[]): number[] | RecordProblem {
  const names = cells.map(sameName);
  const twice = wanted.find((name) => names.filter((each) => each === sameName(name)).length > 1);
  if (twice !== undefined) {
    const found = `two columns ${describe(twice)}`;
    return { line, found, allowed: "each mapped column once", remedy: "Rename one of the two in the file." };
  }
  return wanted.map((name) => names.indexOf(sameName(name)));
}

const longestNames = 200;

function missingColumns(found: ExportHead | undefined, wanted: readonly string[]): RecordProblem {
  const names = found?.head.cells.map(sameName) ?? [];
  const missing = wanted.filter((name) => !names.includes(sameName(name))).map(describe);
  const inFile = found?.head.cells.filter((cell) => cell !== "").join(", ") ?? "";
  const shown = inFile.length > longestNames ? `${inFile.slice(0, longestNames)}…` : inFile;
  return {
    ...(found ? { line: found.head.line } : {}),
    found: found ? `no column ${missing.join(", ")}; there are ${shown}` : "no line of column names",
    allowed: `columns named ${wanted.map(describe).join(", ")}, with tabs, semicolons or commas between`,
    remedy: "Choose the columns again, or rename those of the file.",
  };
}

/** A line under the head that gives the widths and types of the columns, as some networks export it: 15s, 20d, 14n. */
export const isWidths = ({ cells }: CsvLine): boolean => cells.every((cell) => /^\d+[sdn]$/.test(cell));

function rowsBelow(
  text: string,
  { head, separator }: ExportHead,
  columns: readonly number[],
): Pick<ExportTable, "rows" | "faults"> {
  const rows: ExportRow[] = [];
  const faults: RecordProblem[] = [];
  for (const line of exportLines(text, separator)) {
    if (line.line <= head.line) continue;
    if (rows.length >= mostLines) {
      faults.push(tooManyLines(line.line));
      break;
    }
    if ("broken" in line) faults.push(brokenLine(line.line));
    else if (!isWidths(line)) {
      const cells = columns.map((column) => line.cells[column] ?? "");
      if (cells.some((cell) => cell !== "")) rows.push({ line: line.line, cells });
    }
  }
  return { rows, faults };
}

const brokenLine = (line: number): RecordProblem => ({
  line,
  found: "a quotation mark out of place, or a line without an end",
  allowed: "quotation marks only around a whole value",
  remedy: "Correct the line, or export the file again.",
});

const tooManyLines = (line: number): RecordProblem => ({
  line,
  found: `more than ${mostLines.toLocaleString("en-US")} lines`,
  allowed: `at most ${mostLines.toLocaleString("en-US")} lines`,
  remedy: "Export fewer years, or daily means in place of single readings.",
});

/** Comment lines before the head. */
export const commentsBefore = (text: string, { line }: CsvLine): number =>
  text
    .slice(0, headText)
    .split(/\r\n|\n|\r/, line)
    .filter(isComment).length;
