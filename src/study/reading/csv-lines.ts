import { CsvError, parse } from "csv-parse/sync";
import { counted } from "../../counted.js";
import type { RecordProblem } from "./contradiction.js";

export interface CsvLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Non-empty lines of a CSV text, at most `most`, or the problem that prevents reading. */
export function csvLines(csv: string, most: number, delimiter = ","): readonly CsvLine[] | RecordProblem {
  const lines: CsvLine[] = [];
  try {
    parse(csv, {
      delimiter,
      bom: true,
      trim: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      record_delimiter: ["\r\n", "\n", "\r"],
      to: most,
      on_record: (cells, { lines: line }) => {
        lines.push({ line, cells });
        return null;
      },
    });
    return lines;
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return {
      line: (lines.at(-1)?.line ?? 0) + 1,
      found: "a quotation mark out of place",
      allowed: 'quotation marks only around a whole value: "2,135.4"',
      remedy: "Correct the values of this line.",
    };
  }
}

const mostProblems = 20;

/** The first problems, and the number of the rest. */
export function firstProblems(problems: readonly RecordProblem[]): readonly RecordProblem[] {
  const rest = problems.length - mostProblems;
  if (rest <= 0) return problems;
  const remedy = "Correct those told so far; the others are told then.";
  return [
    ...problems.slice(0, mostProblems),
    { found: counted(rest, "more problem"), allowed: "lines without faults", remedy },
  ];
}
