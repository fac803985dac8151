import { stringify } from "csv-stringify/sync";
import { csvLines } from "../study/csv-lines.js";
import type { Problem } from "../study/problems.js";
import { problemsOfDocument } from "../study/read.js";
import { freeId } from "./actions.js";
import { quantityText } from "./amount.js";
import { enteredValue } from "./form-edits.js";
import { problemText } from "./form-node.js";
import { childOf, itemsOf, shownText } from "./form-values.js";
import { type Column, columnsOf, columnWords } from "./structure-columns.js";
import type { Place } from "./study-text.js";

/** A line of a table of structures, read and judged. */
export interface StructureLine {
  readonly line: number;
  readonly name: string;
  readonly structure: object;
  /** Empty for a line that can be taken. */
  readonly problems: readonly string[];
}

export interface StructureTable {
  /** What is wrong with the table as a whole; then no line is read. */
  readonly problems: readonly string[];
  readonly lines: readonly StructureLine[];
  /** The table again, without its sound lines. */
  readonly rest: string;
}

const mostStructures = 2000;

/** Reads a pasted table of structures of one kind and judges each line within its study. Nothing is changed. */
export function readStructureTable(csv: string, kind: string, document: unknown): StructureTable {
  const read = csvLines(csv, mostStructures + 2, delimiterOf(csv));
  if ("found" in read) {
    return broken(
      `Line ${read.line ?? 1}: found ${read.found}; allowed: ${read.allowed}. ${read.remedy}`,
      csv,
    );
  }
  const [head, ...rows] = read;
  if (!head) return broken("There is no table yet: paste one, or choose a file.", csv);
  const heads = headsOf(head.cells, kind);
  if (heads.problems.length > 0) return { problems: heads.problems, lines: [], rest: csv };
  if (rows.length === 0)
    return broken("The table has a head and no lines below it: add a line for each structure.", csv);
  if (rows.length > mostStructures)
    return broken(`At most ${mostStructures} lines at once: split the table.`, csv);
  const present = itemsOf(childOf(document, "structures"));
  const structures: object[] = [];
  for (const { cells } of rows)
    structures.push(structureOf(cells, heads.heads, { kind, others: [...present, ...structures] }));
  const told = problemsByItem(document, [...present, ...structures]);
  const lines = rows.map(({ line }, index): StructureLine => {
    const structure = structures[index] ?? {};
    const problems = (told.get(present.length + index) ?? []).map(inWords);
    return { line, name: shownText(childOf(structure, "name")), structure, problems };
  });
  const bad = rows.filter((_row, index) => (lines[index]?.problems.length ?? 0) > 0);
  const rest = bad.length === 0 ? "" : stringify([head.cells, ...bad.map(({ cells }) => cells)]);
  return { problems: [], lines, rest };
}

const broken = (problem: string, csv: string): StructureTable => ({
  problems: [problem],
  lines: [],
  rest: csv,
});

/** Pasted from a spreadsheet a table has tabs; some save it with semicolons. */
function delimiterOf(csv: string): string {
  const [head = ""] = csv.split(/\r?\n/, 1);
  if (head.includes("\t")) return "\t";
  return head.split(";").length > head.split(",").length ? ";" : ",";
}

interface Head {
  readonly column: Column;
  readonly unit: string;
}

const longestHead = 60;

/** The columns of a table by their heads: "rack clear spacing (in)", or the keys, "rack.clearSpacing". */
function headsOf(
  cells: readonly string[],
  kind: string,
): { heads: (Head | undefined)[]; problems: string[] } {
  const columns = columnsOf(kind);
  const byLetters = new Map(columns.map((column) => [letters(columnWords(column.at)), column]));
  for (const column of columns) if (column.at[1] === 0) byLetters.set(letters(column.at.join(" ")), column);
  const problems: string[] = [];
  const seen = new Set<Column>();
  const heads = cells.map((cell, index): Head | undefined => {
    if (cell === "" || letters(cell) === "kind") return undefined;
    const [, name = cell, unit = ""] = /^(.*?)\s*\(([^()]*(?:\([^()]*\))?[^()]*)\)\s*$/.exec(cell) ?? [];
    const column = byLetters.get(letters(name));
    const shown = cell.slice(0, longestHead);
    if (!column)
      problems.push(
        `Column ${index + 1}: found "${shown}"; allowed: a head of the template. Correct or remove it.`,
      );
    else if (seen.has(column))
      problems.push(`Column ${index + 1}: found "${shown}" a second time; allowed: each column once.`);
    else seen.add(column);
    return column && { column, unit };
  });
  if (problems.length === 0 && ![...seen].some(({ at }) => at[0] === "name")) {
    problems.push('The first line has no column "name": begin with the head of the template.');
  }
  return { heads, problems };
}

const letters = (text: string) => text.toLowerCase().replace(/[^a-z0-9]/g, "");

function structureOf(
  cells: readonly string[],
  heads: readonly (Head | undefined)[],
  { kind, others }: { kind: string; others: readonly unknown[] },
): object {
  const structure: Record<string, unknown> = { id: freeId(kind, others), kind };
  heads.forEach((head, index) => {
    const cell = cells[index]?.trim() ?? "";
    if (head && cell !== "") put(structure, head.column.at, valueOfCell(head, cell));
  });
  return structure;
}

function valueOfCell({ column, unit }: Head, cell: string): unknown {
  if (column.field.kind === "quantity") {
    const text = quantityText({ amount: cell, unit }, column.field.dimension);
    return text !== undefined && /^\d+(\.\d+)?$/.test(text) ? Number(text) : text;
  }
  const answer = /^(yes|y)$/i.test(cell) ? "true" : /^(no|n)$/i.test(cell) ? "false" : cell.toLowerCase();
  return enteredValue(column.field, column.field.kind === "yes-no" ? answer : cell);
}

function put(target: object, [key, ...rest]: Place, value: unknown): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    Reflect.set(target, key, value);
    return;
  }
  const known = childOf(target, key);
  const inner = typeof known === "object" && known !== null ? known : typeof rest[0] === "number" ? [] : {};
  Reflect.set(target, key, inner);
  put(inner, rest, value);
}

/** Problems of structures by their place in the list, each within the whole study. */
function problemsByItem(document: unknown, structures: readonly unknown[]): Map<number, Problem[]> {
  const whole = { ...(typeof document === "object" ? document : {}), structures };
  const told = new Map<number, Problem[]>();
  for (const problem of problemsOfDocument(whole)) {
    const index = problem.at?.[0] === "structures" ? problem.at[1] : undefined;
    if (typeof index === "number") told.set(index, [...(told.get(index) ?? []), problem]);
  }
  return told;
}

const inWords = (problem: Problem): string =>
  `${columnWords((problem.at ?? []).slice(2).map((key) => (typeof key === "symbol" ? "" : key)))}: ${problemText(problem)}`;
