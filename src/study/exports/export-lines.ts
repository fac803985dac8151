import type { CsvLine } from "../reading/csv-lines.js";

export type Separator = "\t" | ";" | ",";
export const separators: readonly Separator[] = ["\t", ";", ","];

/** More lines than this are no quoted value that goes on, but a quotation mark too many. */
const longestValueLines = 20;
/** No line of an export is longer; one that is has lost its line ends. */
const longestLine = 100_000;

/** A line that cannot be cut into values. */
export interface BrokenLine {
  readonly line: number;
  readonly broken: true;
}

/**
 * The lines of an exported file, cut into trimmed values, one after the other, so that nothing but what is asked for
 * stays in memory. Comments (#) and empty lines are counted and passed over.
 *
 * Cut here and not by csv-parse, which takes 6 s of processor time for 200,000 lines of sixty characters where this
 * takes half a second.
 */
export function* exportLines(given: string, separator: Separator): Generator<CsvLine | BrokenLine> {
  const text = given.includes("\n") ? given : given.replaceAll("\r", "\n");
  let number = 0;
  let at = text.startsWith("\ufeff") ? 1 : 0;
  while (at < text.length) {
    const start = at;
    const [first, next] = lineAt(text, start);
    number += 1;
    at = next;
    if (isComment(first) || first.trim() === "") continue;
    if (first.length > longestLine) {
      yield { line: number, broken: true };
      continue;
    }
    if (!first.includes('"')) {
      yield { line: number, cells: first.split(separator).map(trimmed) };
      continue;
    }
    const whole = quotedLine(text, start, separator);
    yield whole ? { line: number, cells: whole.cells } : { line: number, broken: true };
    number += whole?.more ?? 0;
    at = whole?.next ?? next;
  }
}

export const isComment = (line: string): boolean => line.trimStart().startsWith("#");

const trimmed = (cell: string) => cell.trim();

/** A line, whatever ends it, and where the next one starts. */
function lineAt(text: string, start: number): readonly [string, number] {
  const feed = text.indexOf("\n", start);
  const end = feed < 0 ? text.length : feed;
  const line = text.slice(start, end);
  return [line.endsWith("\r") ? line.slice(0, -1) : line, end + 1];
}

interface Whole {
  readonly cells: readonly string[];
  readonly next: number;
  /** Lines beyond the first. */
  readonly more: number;
}

/**
 * A line that has quotation marks, with the lines that a quoted value goes on over. Marks stand around a whole value, and
 * one within it is doubled: a mark elsewhere would swallow the lines up to the next.
 */
function quotedLine(text: string, start: number, separator: Separator): Whole | undefined {
  const cells: string[] = [];
  for (let at = start; ; ) {
    const first = afterBlanks(text, at, separator);
    const cell = text[first] === mark ? quotedCell(text, first) : plainCell(text, first, separator);
    if (!cell || cell.end - start > longestLine) return undefined;
    cells.push(cell.value);
    const end = afterBlanks(text, cell.end, separator);
    at = end + 1;
    if (text[end] === separator) continue;
    const more = text.slice(start, end).split("\n").length - 1;
    const isWhole = (end >= text.length || text[end] === "\n") && more <= longestValueLines;
    return isWhole ? { cells, next: at, more } : undefined;
  }
}

const mark = '"';

function afterBlanks(text: string, start: number, separator: Separator): number {
  let at = start;
  while (text[at] !== separator && (text[at] === " " || text[at] === "\t" || text[at] === "\r")) at += 1;
  return at;
}

interface Cell {
  readonly value: string;
  readonly end: number;
}

function quotedCell(text: string, first: number): Cell | undefined {
  let end = text.indexOf(mark, first + 1);
  while (end >= 0 && text[end + 1] === mark && end - first <= longestLine) end = text.indexOf(mark, end + 2);
  if (end < 0) return undefined;
  const value = text
    .slice(first + 1, end)
    .replaceAll(mark + mark, mark)
    .replaceAll("\r\n", "\n");
  return { value: value.trim(), end: end + 1 };
}

function plainCell(text: string, first: number, separator: Separator): Cell | undefined {
  let end = first;
  while (end < text.length && text[end] !== separator && text[end] !== "\n") {
    if (text[end] === mark) return undefined;
    end += 1;
  }
  return { value: text.slice(first, end).trim(), end };
}
