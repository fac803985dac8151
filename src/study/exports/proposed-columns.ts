import type { LevelColumnsMapped } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { exportDate } from "./export-dates.js";
import { exportLines } from "./export-lines.js";
import { isNumberLike } from "./export-numbers.js";
import { exportHead, isWidths } from "./export-table.js";

/** A column of a file, to choose from. */
export interface FileColumn {
  readonly name: string;
  /** What stands in its first lines. */
  readonly examples: readonly string[];
}

export interface FileColumns {
  /** Line of the names. */
  readonly line: number;
  readonly columns: readonly FileColumn[];
  /** Which are likely meant, for the author to confirm. */
  readonly proposed: Partial<Pick<LevelColumnsMapped, "date" | "level">>;
}

const sampledLines = 40;
const mostExamples = 3;
const mostColumns = 60;
const levelWords = /elev|level|stage|pool|pegel|wasser|height|niveau|cota/i;

/** The columns of a file whose mapping is not known yet. @returns undefined where no line looks like a head */
export function fileColumns(text: string): FileColumns | undefined {
  const found = exportHead(text, []);
  if (!found) return undefined;
  const { head, separator } = found;
  const rows: (readonly string[])[] = [];
  for (const line of exportLines(text, separator)) {
    if (line.line > head.line && "cells" in line && !isWidths(line)) rows.push(line.cells);
    if (rows.length >= sampledLines) break;
  }
  const columns = head.cells.slice(0, mostColumns).map((name, index) => ({
    name,
    cells: rows.map((cells) => cells[index] ?? "").filter((cell) => cell !== ""),
  }));
  const mostly = (cells: readonly string[], is: (cell: string) => boolean) =>
    cells.filter(is).length * 2 > cells.length;
  const date = columns.find(({ cells }) => mostly(cells, isDate))?.name;
  const numeric = columns.filter(({ name, cells }) => name !== date && mostly(cells, isNumberLike));
  const level = (numeric.find(({ name }) => levelWords.test(name)) ?? numeric.at(-1))?.name;
  return {
    line: head.line,
    columns: columns
      .filter(({ name }) => name !== "")
      .map(({ name, cells }) => ({ name, examples: [...new Set(cells)].slice(0, mostExamples) })),
    proposed: { ...(date ? { date } : {}), ...(level ? { level } : {}) },
  };
}

const isDate = (cell: string) =>
  "date" in exportDate(cell, "month-first") || "date" in exportDate(cell, "day-first");

interface Unmapped {
  readonly told: readonly string[];
  readonly problems: readonly RecordProblem[];
}

/** What is said of a file that is read for the first time: that its columns are to be chosen, or that it has none. */
export function unmappedYet(columns: FileColumns | undefined): Unmapped {
  if (columns) {
    const told = "Its columns are offered below: choose those that are asked for, and read the file again.";
    return { told: [told], problems: [] };
  }
  const problem = {
    found: "no line of column names",
    allowed: "a line of column names with tabs, semicolons or commas between, and lines of values below it",
    remedy: "Export the file again with its column names.",
  };
  return { told: [], problems: [problem] };
}
