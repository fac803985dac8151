import { cell, type Stretch, type Worked } from "./formula.js";
import { address, addressIn, type Entry, type SheetDraft, text } from "./sheet.js";

/** A sheet that is being filled in, whose cells formulas of all sheets may name. */
export interface Grid {
  /** Puts an entry in a cell, both counted from 0. @returns the cell, for formulas */
  readonly put: (row: number, column: number, entry: Entry) => Worked;
  /** Puts entries side by side. */
  readonly putRow: (row: number, entries: readonly Entry[], column?: number) => void;
  /** Cells of a column or of a row, first and last included. */
  readonly down: (column: number, first: number, last: number) => Stretch;
  readonly across: (row: number, first: number, last: number) => Stretch;
  /** The same with texts. */
  readonly keys: (column: number, first: number, last: number) => { formula: string; texts: string[] };
  readonly at: (row: number, column: number) => Worked;
  /** Number of rows so far. */
  readonly height: () => number;
  readonly draft: (shape: Omit<SheetDraft, "name" | "rows">) => SheetDraft;
}

export function grid(name: string): Grid {
  const rows: Entry[][] = [];
  const entryAt = (row: number, column: number) => rows[row]?.[column];
  const put = (row: number, column: number, entry: Entry): Worked => {
    while (rows.length <= row) rows.push([]);
    const own = rows[row] ?? [];
    while (own.length < column) own.push(text(""));
    own[column] = entry;
    return cell(addressIn(name, row, column), resultOf(entry));
  };
  const range = (from: readonly [number, number], to: readonly [number, number]) =>
    `'${name}'!${fixed(...from)}:${fixed(...to)}`;
  const places = (first: number, last: number) =>
    Array.from({ length: last - first + 1 }, (_, index) => first + index);
  return {
    put,
    putRow: (row, entries, column = 0) => {
      entries.forEach((entry, index) => {
        put(row, column + index, entry);
      });
    },
    down: (column, first, last) => ({
      formula: range([first, column], [last, column]),
      results: places(first, last).map((row) => resultOf(entryAt(row, column))),
    }),
    across: (row, first, last) => ({
      formula: range([row, first], [row, last]),
      results: places(first, last).map((column) => resultOf(entryAt(row, column))),
    }),
    keys: (column, first, last) => ({
      formula: range([first, column], [last, column]),
      texts: places(first, last).map((row) => String(entryAt(row, column)?.value ?? "")),
    }),
    at: (row, column) => cell(addressIn(name, row, column), resultOf(entryAt(row, column))),
    height: () => rows.length,
    draft: (shape) => ({ ...shape, name, rows }),
  };
}

const fixed = (row: number, column: number) => address(row, column).replace(/^(\D+)/, "$$$1$$");

/** An empty cell, or one of words, counts as nothing in a formula. */
function resultOf(entry: Entry | undefined): number {
  const value = entry?.value ?? 0;
  const result = typeof value === "object" ? value.result : value;
  return typeof result === "number" ? result : 0;
}
