import type { RecordProblem } from "../reading/contradiction.js";
import { type ExportRow, type ExportTable, nothingRead } from "./export-table.js";

interface RowsRead<Line> {
  readonly lines: readonly Line[];
  /** Lines that say nothing that can be used, in their order. */
  readonly refused: readonly RecordProblem[];
}

/** What the rows of a file say. @param one what a row is: "boat" @param needs its columns, in words */
export function readRows<Line extends object>(
  table: ExportTable,
  read: (row: ExportRow) => Line | RecordProblem,
  { one, needs }: { readonly one: string; readonly needs: string },
): RowsRead<Line> {
  const lines: Line[] = [];
  const refused: RecordProblem[] = [...table.faults];
  for (const row of table.rows) {
    const line = read(row);
    if (isProblem(line)) refused.push(line);
    else lines.push(line);
  }
  if (lines.length === 0 && refused.length === 0) refused.push(nothingRead(table, one, needs));
  return { lines, refused: refused.sort((first, other) => (first.line ?? 0) - (other.line ?? 0)) };
}

const isProblem = (line: object): line is RecordProblem => "allowed" in line;
