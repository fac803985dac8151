import { type Column, columnsOf, columnWords } from "./structure-columns.js";

/** A column named in a table's head, with the unit of its figures. */
export interface Head {
  readonly column: Column;
  readonly unit: string;
}

const longestHead = 100;
const longestShown = 60;

/** Reads heads of a table for one kind: "rack clear spacing (in)", or the keys, "rack.clearSpacing". */
export function headReader(kind: string): (cell: string) => Head | undefined {
  const columns = columnsOf(kind);
  const byLetters = new Map(columns.map((column) => [letters(columnWords(column.at)), column]));
  for (const column of columns) byLetters.set(letters(column.at.join(" ")), column);
  return (cell) => {
    if (cell.length > longestHead) return undefined;
    const { name, unit } = nameAndUnit(cell);
    const column = byLetters.get(letters(name));
    return column && { column, unit };
  };
}

/** The head of a column of kinds, which are chosen for the table as a whole. */
export const isKindHead = (cell: string): boolean => cell.length <= longestHead && letters(cell) === "kind";

/** The unit is in brackets at the end, which may be nested: "price (BTU/(h ft2))". */
function nameAndUnit(cell: string): { name: string; unit: string } {
  const text = cell.trim();
  if (!text.endsWith(")")) return { name: text, unit: "" };
  let depth = 0;
  for (let at = text.length - 1; at >= 0; at -= 1) {
    if (text[at] === ")") depth += 1;
    if (text[at] === "(") depth -= 1;
    if (depth === 0) return { name: text.slice(0, at), unit: text.slice(at + 1, -1) };
  }
  return { name: text, unit: "" };
}

const letters = (text: string) => text.toLowerCase().replace(/[^a-z0-9]/g, "");

const mostShown = 20;

/** Columns of a table by head, or the problems of its heads. */
export function headsOf(
  cells: readonly string[],
  read: (cell: string) => Head | undefined,
): { heads: (Head | undefined)[]; problems: string[] } {
  const problems: string[] = [];
  const seen = new Set<Column>();
  const heads = cells.map((cell, index): Head | undefined => {
    if (cell === "" || isKindHead(cell)) return undefined;
    const head = read(cell);
    const found = `Column ${index + 1}: found "${cell.slice(0, longestShown)}"`;
    if (!head) problems.push(`${found}; allowed: a head of the list above the table. Correct or remove it.`);
    else if (seen.has(head.column)) problems.push(`${found} a second time; allowed: each column once.`);
    else seen.add(head.column);
    return head;
  });
  if (problems.length === 0 && ![...seen].some(({ at }) => at[0] === "name")) {
    problems.push('The first line has no column "name": begin with the head of the template.');
  }
  const rest = problems.length - mostShown;
  const shown =
    rest > 0 ? [...problems.slice(0, mostShown), `And ${rest} more columns like these.`] : problems;
  return { heads, problems: shown };
}
