import type { TableView } from "../report/words/view-types.js";

/** A table for a terminal. */
export function tableText({ caption, head, rows, total }: TableView): string {
  const lines = [{ cells: head }, ...rows, ...(total ? [total] : [])];
  const widths = head.map((_, column) =>
    Math.max(...lines.map(({ cells }) => cells[column]?.text.length ?? 0)),
  );
  const text = lines.map(({ cells }) =>
    cells
      .map((cell, column) =>
        cell.numeric ? cell.text.padStart(widths[column] ?? 0) : cell.text.padEnd(widths[column] ?? 0),
      )
      .join("  ")
      .trimEnd(),
  );
  return [caption, ...text, ""].join("\n");
}
