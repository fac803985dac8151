import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import FormulaParser from "fast-formula-parser";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { readXlsx, type Workbook } from "hucre";

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

/** Path of an installed spreadsheet program, if there is one. */
export const spreadsheetProgram: string | undefined = (process.env.PATH ?? "")
  .split(delimiter)
  .flatMap((folder) => ["soffice", "libreoffice"].map((name) => join(folder, name)))
  .find((path) => existsSync(path));

/** The workbook as a spreadsheet program saves it, after the values beside the formulas were taken out. */
export async function savedAgain(file: Uint8Array, program: string): Promise<Workbook> {
  const folder = mkdtempSync(join(tmpdir(), "workbook-"));
  try {
    const input = join(folder, "plain.xlsx");
    writeFileSync(input, withoutResults(file));
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    const outdir = join(folder, "out");
    execFileSync(program, [profile, "--headless", "--convert-to", "xlsx", "--outdir", outdir, input], {
      stdio: "ignore",
    });
    return await readXlsx(readFileSync(join(outdir, "plain.xlsx")));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function withoutResults(file: Uint8Array): Uint8Array {
  const entries = Object.entries(unzipSync(file)).map(([name, bytes]) => [
    name,
    name.startsWith("xl/worksheets/")
      ? strToU8(strFromU8(bytes).replace(/(<\/f>)<v>[^<]*<\/v>/g, "$1"))
      : bytes,
  ]);
  return zipSync(Object.fromEntries(entries));
}
