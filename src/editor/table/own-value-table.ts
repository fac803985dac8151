import { stringify } from "csv-stringify/sync";
import type { AssumptionSet } from "../../assumptions/entry.js";
import { applyOverrides } from "../../assumptions/override.js";
import type { RecordProblem } from "../../study/reading/contradiction.js";
import { type CsvLine, csvLines } from "../../study/reading/csv-lines.js";
import { draftOf } from "../draft.js";
import { withOverrides } from "../override-edits.js";
import { type OwnValue, ownValueIndex } from "../own-value.js";

/** An own value as a line of a table gives it. */
export interface OwnValueLine {
  readonly line: number;
  readonly id: string;
  readonly title: string;
  /** With its unit. */
  readonly value: string;
  readonly reason: string;
}

export interface OwnValueTable {
  readonly lines: readonly OwnValueLine[];
  /** By line; with any of them nothing is to be taken. */
  readonly problems: readonly RecordProblem[];
  /** The study with the own values, where there is no problem. */
  readonly text: string;
}

interface Study {
  readonly text: string;
  readonly fileName: string;
}

/**
 * Own values from a pasted table or a file: id or title, value, unit, reason, parted by tabs, semicolons or commas, in
 * that order where no head names them otherwise. The unit may stand with the value.
 */
export function ownValueTable(csv: string, study: Study, assumptions: AssumptionSet): OwnValueTable {
  const read = csvLines(csv, mostLines + 1, delimiterOf(csv));
  if ("found" in read) return { lines: [], problems: [read], text: study.text };
  const { columns, lines: written } = columnsOf(read);
  const told = written.slice(0, mostLines).map((each) => lineOf(each, columns, assumptions));
  const lines = told.map(({ value }) => value);
  const problems = [
    ...tooFewOrMany(written.length),
    ...[...told.flatMap((each) => each.problems), ...repeated(lines)].toSorted(
      (one, other) => (one.line ?? 0) - (other.line ?? 0),
    ),
  ];
  if (problems.length > 0) return { lines, problems, text: study.text };
  const text = withOverrides(study.text, study.fileName, lines);
  return { lines, problems: contradictions(text, study.fileName, lines), text };
}

const mostLines = 600;

/** Tabs come from spreadsheets; a semicolon or a comma from files. */
const delimiterOf = (csv: string): string => {
  const [first = ""] = csv.trimStart().split("\n");
  return ["\t", ";"].find((each) => first.includes(each)) ?? ",";
};

type Column = "name" | "value" | "unit" | "reason";

const heads: ReadonlyMap<string, Column> = new Map([
  ...["id", "title", "assumption", "name"].map((head) => [head, "name"] as const),
  ...["value", "own value"].map((head) => [head, "value"] as const),
  ...["unit", "units"].map((head) => [head, "unit"] as const),
  ["reason", "reason"],
]);

const usualOrder: readonly Column[] = ["name", "value", "unit", "reason"];

function columnsOf(lines: readonly CsvLine[]) {
  const [first, ...rest] = lines;
  const named = first?.cells.map((cell) => heads.get(cell.toLowerCase())) ?? [];
  if (named.includes("name") && named.includes("value")) return { columns: named, lines: rest };
  return { columns: usualOrder, lines };
}

interface Told {
  readonly value: OwnValueLine;
  readonly problems: readonly RecordProblem[];
}

function lineOf(
  { line, cells }: CsvLine,
  columns: readonly (Column | undefined)[],
  assumptions: AssumptionSet,
): Told {
  const cell = (column: Column) => cells[columns.indexOf(column)] ?? "";
  const entry = entryNamed(cell("name"), assumptions);
  const unit = entry && pureNumbers.includes(cell("unit")) ? "" : cell("unit");
  const id = entry?.id ?? cell("name");
  const own = { id, value: `${cell("value")} ${unit}`.trim(), reason: cell("reason") };
  const problems = applyOverrides(assumptions, [own]).problems.map(({ field, found, allowed }) => ({
    line,
    found: found === "" ? `no ${field}` : found,
    allowed: field === "id" ? `${allowed}, or a title as the list of assumptions has it` : allowed,
    remedy: field === "id" ? "Correct the name, or leave the line out." : "Correct the value or its unit.",
  }));
  return {
    value: { line, title: entry?.title ?? id, ...own },
    problems: own.reason === "" ? [...problems, withoutReason(line, id)] : problems,
  };
}

/** As files state the unit of what has none. */
const pureNumbers: readonly string[] = ["1", "share", "1/yr"];

const entryNamed = (name: string, { entries }: AssumptionSet) =>
  entries.get(name) ?? [...entries.values()].find(({ title }) => title.toLowerCase() === name.toLowerCase());

const withoutReason = (line: number, id: string): RecordProblem => ({
  line,
  found: `no reason for ${id}`,
  allowed: "a text of at most 200 characters, which the report prints",
  remedy: "Write where the value comes from.",
});

const repeated = (lines: readonly OwnValueLine[]): RecordProblem[] =>
  lines.flatMap(({ line, id }, index) => {
    const first = lines.findIndex((each) => each.id === id);
    if (first === index) return [];
    return [
      {
        line,
        found: `${id} a second time, after line ${lines[first]?.line}`,
        allowed: "one line for each assumption",
        remedy: "Keep one of the two.",
      },
    ];
  });

function tooFewOrMany(count: number): RecordProblem[] {
  if (count > 0 && count <= mostLines) return [];
  return [
    {
      found: count === 0 ? "no line" : `more than ${mostLines} lines`,
      allowed: `1 to ${mostLines} lines of id or title, value, unit, reason`,
      remedy: count === 0 ? "Paste lines or choose a file." : "Split them into several tables.",
    },
  ];
}

/** What the study as a whole finds wrong with the values. */
function contradictions(text: string, fileName: string, lines: readonly OwnValueLine[]): RecordProblem[] {
  const draft = draftOf(text, fileName);
  return lines.flatMap(({ line, id }) => {
    const index = ownValueIndex(draft.document, id);
    return draft.problems
      .filter(({ at }) => at?.[0] === "overrides" && at[1] === index)
      .map(({ found, allowed, remedy }) => ({ line, found: `${id}: ${found}`, allowed, remedy }));
  });
}

/** Own values as a table that can be pasted into another study. */
export const ownValueText = (own: ReadonlyMap<string, OwnValue>): string =>
  own.size === 0
    ? ""
    : stringify(
        [...own].map(([id, { value, reason }]) => [id, value, "", reason]),
        { header: true, columns: ["id", "value", "unit", "reason"] },
      );
