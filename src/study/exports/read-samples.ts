import { counted } from "../../counted.js";
import type { SampleColumnsMapped } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { describe } from "../reading/problems.js";
import { type DateOrder, exportDate, type OrderFound, orderOf } from "./export-dates.js";
import { isNumberLike } from "./export-numbers.js";
import { type ExportRow, type ExportTable, exportTable, sameName } from "./export-table.js";
import { droppedTold, type LogAsked, wordsAsked } from "./log-words.js";
import { readRows } from "./read-rows.js";
import { type Sample, type SampleYear, sampleYears } from "./sample-years.js";

/** A file of samples, counted by year. */
export interface SampleLog {
  readonly years: readonly SampleYear[];
  readonly told: readonly string[];
  readonly asked: readonly LogAsked[];
  /** Lines that are not counted, in their order. */
  readonly refused: readonly RecordProblem[];
}

const columnKeys = ["date", "result", "kind", "place"] as const;

/** Reads a file of samples and keeps their counts alone. */
export function readSamples(text: string, mapping: SampleColumnsMapped): SampleLog {
  const keys = columnKeys.filter((key) => mapping[key] !== undefined);
  const mapped = keys.flatMap((key) => mapping[key] ?? []);
  const table = exportTable(text, mapped);
  if ("allowed" in table) return askedOnly([{ about: "columns", problem: table }]);
  const how = { mapping, at: new Map(keys.map((key, index) => [key, index])), ...meanings(mapping) };
  const order: OrderFound = mapping.dates ? { order: mapping.dates, told: "" } : orderOf(table.rows, 0);
  const asked = [
    ...("asked" in order ? [{ about: "dates" as const, problem: order.asked }] : []),
    ...unknownWords(table, how),
  ];
  if (asked.length > 0 || "asked" in order) return askedOnly(asked);
  const read = (row: ExportRow) => sampleIn(row, how, order.order);
  const { lines, refused } = readRows(table, read, { one: "sample", needs: "a date and a result" });
  return {
    years: sampleYears(lines),
    told: [
      `${counted(lines.length, "sample")} read.`,
      ...(mapping.place === undefined && lines.some(({ kind }) => isByPlace(kind)) ? [placeless] : []),
      ...droppedTold(table, mapped),
    ],
    asked: [],
    refused,
  };
}

const isByPlace = (kind: Sample["kind"]) => kind === "settlementPlates" || kind === "searches";
const placeless = "Without a column of places, plates count as one a year and searches as one a day.";

const askedOnly = (asked: readonly LogAsked[]): SampleLog => ({ years: [], told: [], asked, refused: [] });

interface How extends ReturnType<typeof meanings> {
  readonly mapping: SampleColumnsMapped;
  readonly at: ReadonlyMap<string, number>;
}

const meanings = ({ kinds, results }: SampleColumnsMapped) => ({
  kinds: new Map(Object.entries(kinds).map(([word, kind]) => [sameName(word), kind])),
  results: new Map(Object.entries(results).map(([word, result]) => [sameName(word), result])),
});

/** A count says whether there were mussels; what a word means is asked. */
function resultOf(word: string, results: How["results"]): Sample["result"] | undefined {
  const mapped = results.get(word);
  if (mapped || word.startsWith("-") || !isNumberLike(word)) return mapped;
  return /[1-9]/.test(word) ? "mussels" : "none";
}

function unknownWords({ rows, head }: ExportTable, { mapping, at, kinds, results }: How): LogAsked[] {
  const remedy = "Say what each word means.";
  const result = wordsAsked(rows, {
    ...{ about: "results", column: 1, isKnown: (word) => resultOf(word, results) !== undefined, remedy },
    allowed: "counts, or words that are mapped to none, mussels or unconfirmed",
  });
  const kind = at.get("kind");
  if (kind === undefined) {
    const found = "no column of kinds";
    const allowed = "a column of kinds, or the one kind of all samples";
    const problem = { line: head.line, found, allowed, remedy: "Say which kind the samples are." };
    return [...(mapping.all ? [] : [{ about: "kinds" as const, problem }]), ...(result ? [result] : [])];
  }
  const asked = wordsAsked(rows, {
    ...{ about: "kinds", column: kind, isKnown: (word) => kinds.has(word), remedy },
    allowed: "words that are mapped to planktonTows, settlementPlates, searches, ednaSamples or other",
  });
  return [...(asked ? [asked] : []), ...(result ? [result] : [])];
}

function sampleIn(
  { line, cells }: ExportRow,
  { mapping, at, kinds, results }: How,
  order: DateOrder | undefined,
): Sample | RecordProblem {
  const cell = (key: string) => cells[at.get(key) ?? -1] ?? "";
  const fault = (key: string, allowed: string): RecordProblem => ({
    ...{ line, found: `${key} ${cell(key) === "" ? "nothing" : describe(cell(key))}`, allowed },
    remedy: "Correct it in the file, or leave the line out.",
  });
  const date = exportDate(cell("date"), order);
  if ("allowed" in date) return fault("date", date.allowed);
  const result = resultOf(sameName(cell("result")), results);
  if (!result) return fault("result", "a count, or a word for a result");
  const kind = at.has("kind") ? kinds.get(sameName(cell("kind"))) : mapping.all;
  if (!kind) return fault("kind", "a word for a kind of sample");
  return { date: date.date, place: sameName(cell("place")), kind, result };
}
