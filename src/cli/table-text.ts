import { wrapped } from "../report/words/format.js";
import type { RowView, TableView } from "../report/words/view-types.js";

/** Longest line of a cell of text, and of the head of a column of numbers. */
const widestText = 60;
const widestNumberHead = 24;

/** A table for a terminal; long cells take several lines. */
export function tableText({ caption, head, rows, total }: TableView): string {
  const table = [{ cells: head }, ...rows, ...(total ? [total] : [])].map(({ cells }) => cells.map(linesOf));
  const widths = head.map((_, column) =>
    Math.max(...table.flatMap((cells) => (cells[column] ?? []).map((line) => line.length))),
  );
  const text = table.flatMap((cells) => {
    const height = Math.max(...cells.map((lines) => lines.length));
    return Array.from({ length: height }, (_, line) =>
      cells
        .map((lines, column) => {
          const width = widths[column] ?? 0;
          const part = lines[line] ?? "";
          return head[column]?.numeric ? part.padStart(width) : part.padEnd(width);
        })
        .join("  ")
        .trimEnd(),
    );
  });
  return [caption, ...text, ""].join("\n");
}

const linesOf = ({ text, numeric }: RowView["cells"][number]): string[] =>
  text === "" ? [""] : wrapped(text, numeric ? widestNumberHead : widestText);
