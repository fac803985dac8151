import FormulaParser from "fast-formula-parser";
import { type Cell, readXlsx } from "hucre";
import { fills } from "../../src/forms/workbook/sheet.js";

/** A cell of a workbook, by its sheet and its address. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly col: number;
}

/** A cell with a formula: what the workbook says, and what an outside program makes of it. */
export interface Recalculated {
  readonly place: string;
  readonly formula: string;
  readonly kept: unknown;
  readonly found: unknown;
}

/** A number without a formula. */
export interface Typed {
  readonly place: Place;
  readonly value: number;
  /** What its color says of it: input or computed. */
  readonly color: string | undefined;
  /** Text of the first cell of its row. */
  readonly name: string;
}

/** A workbook that an outside program works out: anew, or after another number was put into a cell. */
export interface LiveBook {
  readonly all: () => Recalculated[];
  readonly typed: readonly Typed[];
  readonly valueAt: (place: Place) => unknown;
  /** Formulas by the keys of their cells. */
  readonly formulas: ReadonlyMap<string, string>;
  /** Rows of a sheet. */
  readonly rows: (sheet: string) => readonly (readonly unknown[])[];
  /** Values of all cells that are others than before, once a cell holds this number. */
  readonly changed: (
    place: Place,
    value: number,
    isAsked?: (sheet: string) => boolean,
  ) => ReadonlyMap<string, unknown>;
}

export const keyOf = ({ sheet, row, col }: Place): string => `${sheet}!${row},${col}`;

const functions = {
  // The program knows no MIN and MAX of its own; every argument of theirs in a workbook is one number.
  MIN: (...cells: { value: unknown }[]) => Math.min(...cells.map(({ value }) => Number(value))),
  MAX: (...cells: { value: unknown }[]) => Math.max(...cells.map(({ value }) => Number(value))),
};

interface Found {
  readonly place: Place;
  readonly formula: string;
}

/** @returns the workbook with its formulas in the order in which one rests on another */
export async function liveBook(file: Uint8Array): Promise<LiveBook> {
  const { sheets } = await readXlsx(file, { readStyles: true });
  const values = new Map<string, unknown>();
  const formulas = new Map<string, Found>();
  const typed: Typed[] = [];
  for (const { name, cells, rows } of sheets) {
    rows.forEach((row, index) => {
      row.forEach((value, column) => {
        values.set(keyOf({ sheet: name, row: index + 1, col: column + 1 }), value);
      });
    });
    for (const [at, cell] of cells ?? []) {
      const [row = 0, column = 0] = at.split(",").map(Number);
      const place = { sheet: name, row: row + 1, col: column + 1 };
      if (cell.formula) formulas.set(keyOf(place), { place, formula: cell.formula });
      else if (typeof cell.value === "number")
        typed.push({ place, value: cell.value, color: colorOf(cell), name: String(rows[row]?.[0] ?? "") });
    }
  }
  const parser = (known: (key: string) => unknown) =>
    new FormulaParser({
      functions,
      onCell: (place) => known(keyOf(place)),
      onRange: ({ sheet, from, to }) =>
        Array.from({ length: to.row - from.row + 1 }, (_, row) =>
          Array.from({ length: to.col - from.col + 1 }, (__, column) =>
            known(keyOf({ sheet, row: from.row + row, col: from.col + column })),
          ),
        ),
    });
  const order = once(() => inOrder(formulas));
  return {
    typed,
    valueAt: (place) => values.get(keyOf(place)),
    all: () => {
      const outside = parser((key) => values.get(key));
      return [...formulas].map(([key, { place, formula }]) => ({
        place: key,
        formula,
        kept: values.get(key),
        found: outside.parse(formula, place),
      }));
    },
    formulas: new Map([...formulas].map(([key, { formula }]) => [key, formula])),
    rows: (sheet) => sheets.find(({ name }) => name === sheet)?.rows ?? [],
    changed: (place, value, isAsked = () => true) => {
      const now = new Map<string, unknown>([[keyOf(place), value]]);
      const outside = parser((key) => (now.has(key) ? now.get(key) : values.get(key)));
      for (const { key, rests } of order()) {
        const formula = formulas.get(key);
        if (!formula || !isAsked(formula.place.sheet) || !rests.some((each) => now.has(each))) continue;
        const found = outside.parse(formula.formula, formula.place);
        if (!isAlike(found, values.get(key))) now.set(key, found);
      }
      return now;
    },
  };
}

/** As far as one number of a computer can be told from another. */
const isAlike = (one: unknown, other: unknown) =>
  one === other ||
  (typeof one === "number" &&
    typeof other === "number" &&
    Math.abs(one - other) <= 1e-13 * Math.max(Math.abs(one), Math.abs(other)));

interface Ordered {
  readonly key: string;
  readonly rests: readonly string[];
}

/** Formulas in the order in which one rests on another, as an outside program reads what they name. */
function inOrder(formulas: ReadonlyMap<string, Found>): Ordered[] {
  const reader = new FormulaParser.DepParser();
  const rests = new Map(
    [...formulas].map(([key, { place, formula }]) => [key, reader.parse(formula, place).flatMap(cellsOf)]),
  );
  const order: Ordered[] = [];
  const state = new Map<string, "open" | "done">();
  const visit = (key: string) => {
    const named = rests.get(key);
    if (!named || state.get(key) === "done") return;
    if (state.get(key) === "open") throw new Error(`${key} rests on itself`);
    state.set(key, "open");
    for (const each of named) visit(each);
    state.set(key, "done");
    order.push({ key, rests: named });
  };
  for (const key of rests.keys()) visit(key);
  return order;
}

function cellsOf(named: FormulaParser.Named): string[] {
  if (!("from" in named)) return [keyOf(named)];
  const { sheet, from, to } = named;
  return Array.from({ length: to.row - from.row + 1 }, (_, row) => row).flatMap((row) =>
    Array.from({ length: to.col - from.col + 1 }, (_, column) =>
      keyOf({ sheet, row: from.row + row, col: from.col + column }),
    ),
  );
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

const colorOf = ({ style }: Cell): string | undefined => {
  const fill = style?.fill;
  const rgb = fill?.type === "pattern" ? fill.fgColor?.rgb?.slice(-6) : undefined;
  return Object.entries(fills).find(([, each]) => each === rgb)?.[0];
};

/**
 * Every formula of a workbook worked out again from the values that the cells it names have. Since each agrees with the
 * value beside it, all of them follow from the cells without formulas.
 */
export const recalculated = async (file: Uint8Array): Promise<Recalculated[]> => (await liveBook(file)).all();
