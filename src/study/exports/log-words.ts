import { counted } from "../../counted.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { type ExportRow, type ExportTable, sameName } from "./export-table.js";

/** What a log asks of its author. */
export interface LogAsked {
  readonly about:
    | "columns"
    | "unit"
    | "dates"
    | "decimals"
    | "classes"
    | "kinds"
    | "results"
    | "structures"
    | "works";
  readonly problem: RecordProblem;
  /** Words of the file whose meaning is asked for. */
  readonly words?: readonly string[];
}

const [mostTold, mostWords, longestWord] = [8, 40, 60];

interface WordsOfColumn {
  readonly about: Exclude<LogAsked["about"], "columns" | "unit" | "dates" | "decimals">;
  /** Where in a row they stand. */
  readonly column: number;
  /** Whether a word, in the form in which names are compared, has a meaning. */
  readonly isKnown: (word: string) => boolean;
  readonly allowed: string;
  readonly remedy: string;
  /** What the words are of, where its name says it badly. */
  readonly noun?: string;
}

/**
 * Asks for the meaning of words that nobody has mapped. A line without a word is refused as it is read, and so is one whose
 * date, its first value, has no digit: the line of totals at the end. @returns undefined where all words are mapped
 */
export function wordsAsked(
  rows: readonly ExportRow[],
  { about, column, isKnown, allowed, remedy, noun = about }: WordsOfColumn,
): LogAsked | undefined {
  const found = new Map<string, { readonly line: number; count: number }>();
  for (const { line, cells } of rows) {
    const [date = "", word = ""] = [cells[0], cells[column]];
    if (word === "" || !/\d/.test(date) || isKnown(sameName(word))) continue;
    const seen = found.get(word);
    if (seen) seen.count += 1;
    else if (found.size < mostWords) found.set(word, { line, count: 1 });
  }
  const [first] = found.values();
  if (!first) return undefined;
  const told = [...found].map(
    ([word, { count }]) => `“${word.slice(0, longestWord)}” in ${counted(count, "line")}`,
  );
  const atLeast = told.length === mostWords ? "at least " : "";
  const more = told.length > mostTold ? `; ${atLeast}${told.length - mostTold} more` : "";
  return {
    ...{ about, words: [...found.keys()] },
    problem: {
      ...{ line: first.line, allowed, remedy },
      found: `the ${noun} ${told.slice(0, mostTold).join(", ")}${more}`,
    },
  };
}

/** What of a file is not kept, by the names of its columns. */
export function droppedTold({ head }: ExportTable, mapped: readonly string[]): string[] {
  const names = new Set(mapped.map(sameName));
  const dropped = head.cells.filter((name) => name !== "" && !names.has(sameName(name)));
  return dropped.length > 0 ? [`Dropped and not kept: ${dropped.join(", ")}.`] : [];
}
