import type { RecordProblem } from "./contradiction.js";
import { type CsvLine, csvLines } from "./csv-lines.js";
import { asDecimals, asThousands, decimalSign, numbersIn, withPoints } from "./csv-numbers.js";
import { describe } from "./problems.js";

/** A line of a table; if it has a fault of its own, its values must not be read. */
export interface TableLine extends CsvLine {
  /** As typed; `cells` has points for decimal commas. */
  readonly typed: readonly string[];
  readonly problem?: RecordProblem;
}

export interface CsvTable {
  /** Absent if there is no line. */
  readonly head: CsvLine | undefined;
  readonly body: readonly TableLine[];
  readonly separator: Separator;
}

type Separator = "," | ";" | "\t";

/**
 * Reads a table with a head: levels, seasons, launches or structures, from a file or pasted. The rules for all:
 *
 * - **Separator.** Tabs if the head has any; else semicolons if it has more of them than commas; else commas.
 * - **Surplus.** A line with more values than the head is a fault: an unquoted 12,000 would become 12 and shift the
 *   values after it. So is a value in a column without a name. Empty values at the end of a line or head are ignored.
 * - **Decimals.** Only numbers in numeric columns count. One that is unambiguous sets the decimal sign of the whole
 *   table: 40.5, 1,240.5, 1,240,000 and 1240.125 have points; 40,5, 1.240,5, 0,125 and 1240,125 have commas. If commas
 *   separate values, decimal commas are faults even in quotation marks. With tabs or semicolons they are read if no
 *   number of the table has a decimal point; otherwise the lines with decimal commas are faults.
 * - **Thousands.** A number such as 12,000 or 12.000 (one to three digits, a sign, three more) is ambiguous. Its
 *   decimal sign is taken to be a point if another number of the table has one and none has a decimal comma, or if
 *   commas separate values and no number has a decimal comma. Otherwise it is not guessed: its line is a fault that
 *   gives both readings and how to write each.
 *
 * @param most largest number of lines read, including the head
 * @param isNumeric whether a column holds numbers, by its head
 */
export function csvTable(
  csv: string,
  most: number,
  isNumeric: (head: string) => boolean,
): CsvTable | RecordProblem {
  const separator = separatorOf(csv);
  const lines = csvLines(csv, most, separator);
  if ("found" in lines) return lines;
  const [first, ...body] = lines;
  if (!first) return { head: first, body: [], separator };
  const head = {
    ...first,
    cells: first.cells.slice(0, first.cells.findLastIndex((cell) => cell !== "") + 1),
  };
  const numeric = head.cells.map(isNumeric);
  const signs = signsOf(body, numeric, separator);
  return { head, body: body.map((line) => tableLine(line, head, { numeric, signs })), separator };
}

function separatorOf(csv: string): Separator {
  const head = csv.trimStart().split(/[\r\n]/, 1)[0] ?? "";
  if (head.includes("\t")) return "\t";
  return head.split(";").length > head.split(",").length ? ";" : ",";
}

interface Signs {
  readonly separator: Separator;
  /** First number with a decimal point, and first with a decimal comma. */
  readonly point: Found | undefined;
  readonly comma: Found | undefined;
}

interface Found {
  readonly line: number;
  readonly number: string;
}

const numericCells = ({ cells }: CsvLine, numeric: readonly boolean[]) =>
  cells.filter((_cell, column) => numeric[column]);

function signsOf(body: readonly CsvLine[], numeric: readonly boolean[], separator: Separator): Signs {
  const first = new Map<string, Found>();
  for (const line of body) {
    if (line.cells.length > numeric.length) continue;
    for (const number of numericCells(line, numeric).flatMap(numbersIn)) {
      const sign = decimalSign(number);
      if (sign && !first.has(sign)) first.set(sign, { line: line.line, number });
    }
  }
  return { separator, point: first.get("point"), comma: first.get("comma") };
}

interface Reading {
  readonly numeric: readonly boolean[];
  readonly signs: Signs;
}

function tableLine(given: CsvLine, head: CsvLine, { numeric, signs }: Reading): TableLine {
  const shape = shapeProblem(given, head);
  if (shape) return { ...given, typed: given.cells, problem: shape };
  const line = { ...given, cells: given.cells.slice(0, head.cells.length) };
  const { cells } = line;
  const [problem] = numericCells(line, numeric)
    .flatMap(numbersIn)
    .flatMap((number) => numberProblem(line.line, number, signs));
  if (problem) return { ...line, typed: cells, problem };
  if (!signs.comma) return { ...line, typed: cells };
  return { ...line, typed: cells, cells: cells.map((cell, at) => (numeric[at] ? withPoints(cell) : cell)) };
}

/** Values in columns without a head. */
function shapeProblem({ line, cells }: CsvLine, head: CsvLine): RecordProblem | undefined {
  const nameless = cells.findIndex((cell, column) => cell !== "" && (head.cells[column] ?? "") === "");
  if (nameless < 0) return undefined;
  if (nameless < head.cells.length) {
    const found = `${describe(cells[nameless])} in column ${nameless + 1}, which has no name`;
    return { line, found, allowed: "values below a name", remedy: "Name the column, or take the value out." };
  }
  const names = head.cells.join(", ");
  return {
    line,
    found: `${cells.length} values`,
    allowed: `${head.cells.length} values: ${names.length > longestNames ? `${names.slice(0, longestNames)}…` : names}`,
    remedy: `Take the others out; a number with thousands separators needs quotation marks: "2,135.4", and decimal commas need semicolons between the values.`,
  };
}

const longestNames = 300;

/** Numbers that are unreadable or ambiguous. */
function numberProblem(line: number, number: string, signs: Signs): RecordProblem[] {
  const { separator, point, comma } = signs;
  const sign = decimalSign(number);
  if (sign === "comma" && point) {
    return [decimalComma(line, number, `a decimal point, as in ${point.number} in line ${point.line}`)];
  }
  if (sign === "comma" && separator === ",") {
    return [decimalComma(line, number, "a decimal point, in a table with commas between its values")];
  }
  if (sign !== "either" || (!comma && (point || separator === ","))) return [];
  const decimals = comma ? number.replace(".", ",") : number;
  return [
    {
      line,
      found: `${describe(number)}, which may be ${asDecimals(number)} or ${asThousands(number)}`,
      allowed: "a number that can be read in only one way",
      remedy: `Write ${asThousands(number)} for the one, or ${decimals}0, with one more zero, for the other.`,
    },
  ];
}

const decimalComma = (line: number, number: string, allowed: string): RecordProblem => ({
  line,
  found: `${describe(number)}, with a decimal comma`,
  allowed,
  remedy: `Write ${asDecimals(number.replaceAll(".", ""))}, or put tabs or semicolons between the values and use decimal commas throughout.`,
});
