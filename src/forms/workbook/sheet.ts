import type { Cell, WriteSheet } from "hucre";
import { forXml } from "../../study/reading/characters.js";

/** A formula as the spreadsheet reads it, without "=", and the value that it has now. */
export interface Formula {
  readonly formula: string;
  readonly result: number | string;
}

export type Look =
  | "title"
  | "head"
  | "note"
  | "unit"
  | "text"
  | "paragraph"
  | "input-legend"
  | "computed-legend"
  | "cents"
  | "whole"
  | "factor"
  | "exact"
  | "percent"
  | "plain";

/** What stands in a cell; text is always kept as text, whatever it looks like. */
export interface Entry {
  readonly value: string | number | Formula;
  readonly look: Look;
  readonly strong: boolean;
  /** Whether the reader may put another number in its place; other numbers were computed by the program. */
  readonly isInput?: boolean;
}

export const text = (value: string, look: Look = "text"): Entry => ({ value, look, strong: false });

export const value = (amount: number | Formula, look: Look): Entry => ({
  value: amount,
  look,
  strong: false,
});

/** A number that the reader may change. */
export const input = (amount: number, look: Look): Entry => ({ ...value(amount, look), isInput: true });

export const strong = (entry: Entry): Entry => ({ ...entry, strong: true });

interface Limit {
  readonly row: number;
  readonly column: number;
  readonly from: number;
  readonly to: number;
}

export interface SheetDraft {
  readonly name: string;
  readonly widths: readonly number[];
  /** Rows at the top that stay in view. */
  readonly headRows: number;
  readonly rows: ReadonlyArray<readonly Entry[]>;
  /** Cells of one row that are joined into one, first and last column included. */
  readonly joined?: ReadonlyArray<{ readonly row: number; readonly from: number; readonly to: number }>;
  /** Cells that take whole numbers within limits alone. */
  readonly limits?: readonly Limit[];
}

/** Address of a cell, both counted from 0: A1 is 0, 0. */
export function address(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

/** The same from another sheet. */
export const addressIn = (sheet: string, row: number, column: number): string =>
  `'${sheet}'!${address(row, column)}`;

/** A stretch of one column, both rows included, with addresses that do not move when copied. */
export function columnRange(column: number, firstRow: number, lastRow: number): string {
  const letters = columnLetters(column);
  return `$${letters}$${firstRow + 1}:$${letters}$${lastRow + 1}`;
}

const lettersInAlphabet = 26;

function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % lettersInAlphabet));
  return column < lettersInAlphabet ? last : columnLetters(Math.floor(column / lettersInAlphabet) - 1) + last;
}

const formats: Partial<Record<Look, string>> = {
  cents: "#,##0.00;[Red]-#,##0.00",
  whole: "0",
  factor: "0.000000",
  percent: "0.00##%",
  exact: "General",
  plain: "#,##0.####",
};

/** A sheet as the library takes it. */
export function sheetOf({ name, widths, headRows, rows, joined = [], limits = [] }: SheetDraft): WriteSheet {
  const cells = new Map<string, Partial<Cell>>();
  rows.forEach((row, rowIndex) => {
    row.forEach((entry, columnIndex) => {
      if (entry.value !== "") cells.set(`${rowIndex},${columnIndex}`, cellOf(withinSheet(entry, name)));
    });
  });
  return {
    name: forXml(name),
    cells,
    columns: widths.map((width) => ({ width })),
    rowDefs: new Map(rows.flatMap((row, index) => heightOf(row).map((height) => [index, { height }]))),
    merges: joined.map(({ row, from, to }) => ({ startRow: row, endRow: row, startCol: from, endCol: to })),
    dataValidations: limits.map(({ row, column, from, to }) => ({
      type: "whole" as const,
      operator: "between" as const,
      range: address(row, column),
      ...{ formula1: String(from), formula2: String(to), showErrorMessage: true },
      errorMessage: `A whole number from ${from} to ${to}; others are computed by the program.`,
    })),
    freezePane: { rows: headRows, columns: 0 },
    pageSetup: { orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    headerFooter: { oddFooter: "&L&A&Rpage &P of &N" },
  };
}

/** A formula without the name of the sheet in which it stands. */
function withinSheet(entry: Entry, sheet: string): Entry {
  if (typeof entry.value !== "object") return entry;
  const formula = entry.value.formula.replaceAll(`'${sheet}'!`, "");
  return { ...entry, value: { ...entry.value, formula } };
}

const lineHeight = 15;
const headLines = 2;
const charactersPerLine = 140;

/** Points, where a row needs another height than one line: programs do not all find it out for joined cells. */
function heightOf(row: readonly Entry[]): number[] {
  const [first] = row;
  if (first?.look === "paragraph") {
    return [lineHeight * Math.ceil(String(first.value).length / charactersPerLine)];
  }
  return row.some(({ look }) => look === "head") ? [lineHeight * headLines] : [];
}

/**
 * Spreadsheet programs, and the library that reads workbooks in tests, take "_x0041_" within a text for the letter A: the
 * underscore before is written by its own number.
 */
const cellText = (value: string): string => forXml(value).replace(/_(?=x[\da-f]{4}_)/gi, "_x005F_");

function cellOf(entry: Entry): Partial<Cell> {
  const style = styleOf(entry);
  if (typeof entry.value === "string") return { type: "string", value: cellText(entry.value), style };
  if (typeof entry.value === "number") return { type: "number", value: entry.value, style };
  const { formula, result } = entry.value;
  return { type: "formula", value: result, formula, formulaResult: result, style };
}

/** Colours of numbers without a formula: what the reader may change, and what the program computed. */
export const fills = { input: "FFF2B3", computed: "E3E6EA" };

const filled = (rgb: string) => ({
  fill: { type: "pattern" as const, pattern: "solid" as const, fgColor: { rgb } },
});

function fillOf({ value: shown, look, isInput = false }: Entry) {
  if (isInput || look === "input-legend") return filled(fills.input);
  return typeof shown === "number" || look === "computed-legend" ? filled(fills.computed) : {};
}

function styleOf(entry: Entry): NonNullable<Cell["style"]> {
  const { look, strong: isStrong, value: shown } = entry;
  const numFmt = formats[look];
  const bold = isStrong || look === "title" || look === "head";
  return {
    font: { bold, italic: look === "note", ...(look === "title" ? { size: 14 } : {}) },
    alignment: {
      vertical: "top",
      ...(look === "unit" ? { horizontal: "left" as const, indent: 1 } : {}),
      ...(look === "head" || look === "paragraph" ? { wrapText: true } : {}),
      ...(typeof shown === "string" ? {} : { horizontal: "right" as const }),
    },
    ...(numFmt === undefined ? {} : { numFmt }),
    ...fillOf(entry),
    ...(look === "head" ? { border: { bottom: { style: "thin" as const } } } : {}),
  };
}
