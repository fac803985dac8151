import FormulaParser from "fast-formula-parser";
import { readXlsx } from "hucre";

/** A cell with a formula: what the workbook says, and what an outside program makes of it. */
export interface Recalculated {
  readonly place: string;
  readonly formula: string;
  readonly kept: unknown;
  readonly found: unknown;
}

/**
 * Every formula of a workbook worked out again from the values that the cells it names have. Since each agrees with the
 * value beside it, all of them follow from the cells without formulas.
 */
export async function recalculated(file: Uint8Array): Promise<Recalculated[]> {
  const { sheets } = await readXlsx(file);
  const rowsOf = new Map(sheets.map(({ name, rows }) => [name, rows]));
  const valueAt = (sheet: string, row: number, column: number) => rowsOf.get(sheet)?.[row - 1]?.[column - 1];
  const parser = new FormulaParser({
    // The program knows no MIN and MAX; every argument of theirs in a workbook is one number.
    functions: {
      MIN: (...cells) => Math.min(...cells.map(({ value }) => Number(value))),
      MAX: (...cells) => Math.max(...cells.map(({ value }) => Number(value))),
    },
    onCell: ({ sheet, row, col }) => valueAt(sheet, row, col),
    onRange: ({ sheet, from, to }) =>
      Array.from({ length: to.row - from.row + 1 }, (_, row) =>
        Array.from({ length: to.col - from.col + 1 }, (__, column) =>
          valueAt(sheet, from.row + row, from.col + column),
        ),
      ),
  });
  return sheets.flatMap(({ name, cells }) =>
    [...(cells ?? [])].flatMap(([place, { formula }]) => {
      if (!formula) return [];
      const [row = 0, column = 0] = place.split(",").map(Number);
      const found = parser.parse(formula, { sheet: name, row: row + 1, col: column + 1 });
      return [{ place: `${name}, ${place}`, formula, kept: valueAt(name, row + 1, column + 1), found }];
    }),
  );
}
