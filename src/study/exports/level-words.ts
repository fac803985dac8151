import { counted } from "../../counted.js";
import { describe } from "../reading/problems.js";
import { isNumberLike } from "./export-numbers.js";
import { type ExportRow, sameName } from "./export-table.js";
import type { Asked } from "./level-export.js";

const mostTold = 8;

/** Words in place of numbers that nobody has said to mean "missing": the author is asked, and they are not passed over. */
export function unknownWords(
  rows: readonly ExportRow[],
  column: number,
  missing: readonly string[],
): Asked | undefined {
  const known = new Set(missing.map(sameName));
  const found = new Map<string, { readonly line: number; count: number }>();
  for (const { line, cells } of rows) {
    const cell = cells[column] ?? "";
    if (cell === "" || isNumberLike(cell) || known.has(sameName(cell))) continue;
    const seen = found.get(cell);
    if (seen) seen.count += 1;
    else found.set(cell, { line, count: 1 });
  }
  const [first] = found.values();
  if (!first) return undefined;
  const words = [...found];
  const told = words
    .slice(0, mostTold)
    .map(
      ([word, { count, line }]) =>
        `${describe(word)} in ${counted(count, "line")}, the first in line ${line}`,
    );
  const left = words.length - told.length;
  return {
    about: "missing",
    words: words.slice(0, mostTold).map(([word]) => word),
    problem: {
      line: first.line,
      found: `${told.join("; ")}${left > 0 ? `; ${left} more` : ""}`,
      allowed: "numbers, nothing, or words listed as missing",
      remedy: "List those that mean ice or no reading; correct the others in the file.",
    },
  };
}
