import { stringify } from "csv-stringify/sync";
import type { RecordProblem } from "../../study/reading/contradiction.js";
import type { CsvLine } from "../../study/reading/csv-lines.js";
import { csvTable, type TableLine } from "../../study/reading/csv-table.js";
import { readDraft } from "../../study/reading/judged.js";
import { describe, type Problem } from "../../study/reading/problems.js";
import { freeIds } from "../actions.js";
import { quantityText } from "../amounts/amount.js";
import { namedThings } from "../choices.js";
import { enteredValue } from "../form-edits.js";
import { childOf, itemsOf, shownText } from "../form-values.js";
import type { Place } from "../study-text.js";
import { lineProblems, referencesIn } from "./line-problems.js";
import { type Head, headReader, headsOf, isKindHead } from "./structure-heads.js";
import { isExampleName } from "./template.js";

/** A line of a table of structures, read and judged. */
interface StructureLine {
  readonly line: number;
  readonly name: string;
  readonly structure: object;
  /** Empty for an acceptable line. */
  readonly problems: readonly string[];
}

export interface StructureTable {
  /** Problems of the table as a whole; if any, no line is read. */
  readonly problems: readonly string[];
  readonly lines: readonly StructureLine[];
  /** The table without its sound lines. */
  readonly rest: string;
}

const mostStructures = 2000;

/** Reads a pasted table of structures of one kind and checks each line within its study, changing nothing. */
export function readStructureTable(csv: string, kind: string, document: unknown): StructureTable {
  const headOf = headReader(kind);
  const read = csvTable(csv, mostStructures + 2, (cell) => holdsNumbers(headOf(cell)));
  if ("found" in read) return broken(`Line ${read.line ?? 1}: ${problemInWords(read)}`, csv);
  const { head, body, separator } = read;
  if (!head) return broken("There is no table yet: paste one, or choose a file.", csv);
  const heads = headsOf(head.cells, headOf);
  if (heads.problems.length > 0) return { problems: heads.problems, lines: [], rest: csv };
  const nameAt = heads.heads.findIndex((each) => each?.column.at[0] === "name");
  const rows = body.filter(({ cells }) => !isExampleName(cells[nameAt] ?? ""));
  if (rows.length === 0)
    return broken("The table has a head and no lines below it: add a line for each structure.", csv);
  if (rows.length > mostStructures)
    return broken(`At most ${mostStructures} lines at once: split the table.`, csv);
  const present = itemsOf(childOf(document, "structures"));
  const nextId = freeIds(kind, present);
  const structures = rows.map(({ cells }) =>
    structureOf(cells, heads.heads, { id: nextId(), kind, document }),
  );
  const all = [...present, ...structures];
  const problemsByIndex = problemsByItem(document, all);
  const references = referencesIn(heads.heads, document, all);
  const lines = rows.map((row, index): StructureLine => {
    const { line } = row;
    const structure = structures[index] ?? {};
    const problem = row.problem ?? otherKind(row, head, kind);
    const problems = problem
      ? [`F${problemInWords(problem).slice(1)}`]
      : lineProblems(structure, problemsByIndex.get(present.length + index) ?? [], references);
    return { line, name: shownText(childOf(structure, "name")), structure, problems };
  });
  const bad = rows.filter((_row, index) => (lines[index]?.problems.length ?? 0) > 0);
  const rest =
    bad.length === 0
      ? ""
      : stringify([head.cells, ...bad.map(({ typed }) => typed)], { delimiter: separator });
  return { problems: [], lines, rest };
}

const broken = (problem: string, csv: string): StructureTable => ({
  problems: [problem],
  lines: [],
  rest: csv,
});

const problemInWords = ({ found, allowed, remedy }: RecordProblem): string =>
  `found ${found}; allowed: ${allowed}. ${remedy}`;

const holdsNumbers = (head: Head | undefined): boolean =>
  head !== undefined && (head.column.field.kind === "quantity" || head.column.field.kind === "number");

/** A problem of a line that names a different kind from the table's. */
function otherKind({ line, cells }: TableLine, head: CsvLine, kind: string): RecordProblem | undefined {
  const found = cells[head.cells.findIndex(isKindHead)] ?? "";
  if (found === "" || found.toLowerCase() === kind) return undefined;
  const remedy = `Take the line out, or choose the kind ${describe(found)} for a table of its own.`;
  return { line, found: `the kind ${describe(found)}`, allowed: `${kind}, the kind chosen`, remedy };
}

function structureOf(
  cells: readonly string[],
  heads: readonly (Head | undefined)[],
  { id, kind, document }: { id: string; kind: string; document: unknown },
): object {
  const structure: Record<string, unknown> = { id, kind };
  heads.forEach((head, index) => {
    const cell = cells[index]?.trim() ?? "";
    if (head && cell !== "") put(structure, head.column.at, valueOfCell(head, cell, document));
  });
  return structure;
}

function valueOfCell({ column, unit }: Head, cell: string, document: unknown): unknown {
  if (column.field.kind === "reference") return idNamed(column.field.to, cell, document);
  if (column.field.kind === "quantity") {
    const text = quantityText({ amount: cell, unit }, column.field.dimension);
    return text !== undefined && /^\d+(\.\d+)?$/.test(text) ? Number(text) : text;
  }
  const answer = /^(yes|y)$/i.test(cell) ? "true" : /^(no|n)$/i.test(cell) ? "false" : cell.toLowerCase();
  return enteredValue(column.field, column.field.kind === "yes-no" ? answer : cell);
}

/** The id of what a cell names: "Town of Alder" is the bearer of that name. */
function idNamed(to: string, cell: string, document: unknown): string {
  const typed = cell.toLowerCase();
  const named = namedThings(to, document).filter(({ name }) => name.toLowerCase() === typed);
  return named.length === 1 ? (named[0]?.id ?? cell) : cell;
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

/** Problems of structures by index, each within the whole study. */
function problemsByItem(document: unknown, structures: readonly unknown[]): Map<number, Problem[]> {
  const whole = { ...(typeof document === "object" ? document : {}), structures };
  const problemsByIndex = new Map<number, Problem[]>();
  for (const problem of readDraft(whole).problems) {
    const index = problem.at?.[0] === "structures" ? problem.at[1] : undefined;
    if (typeof index === "number")
      problemsByIndex.set(index, [...(problemsByIndex.get(index) ?? []), problem]);
  }
  return problemsByIndex;
}
