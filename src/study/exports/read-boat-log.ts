import { counted } from "../../counted.js";
import type { BoatColumnsMapped } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { boatLine, type LogReading } from "./boat-lines.js";
import { type BoatSums, type ClassSum, sumBoats } from "./boat-sums.js";
import { orderOf } from "./export-dates.js";
import { decimalsOf } from "./export-numbers.js";
import { type ExportRow, type ExportTable, exportTable, sameName } from "./export-table.js";
import { droppedTold, type LogAsked, wordsAsked } from "./log-words.js";
import { readRows } from "./read-rows.js";

/** A log of boats, summed by season and class. */
export interface BoatLog {
  readonly sums: BoatSums;
  readonly told: readonly string[];
  readonly asked: readonly LogAsked[];
  /** Lines that are in no sum, in their order. */
  readonly refused: readonly RecordProblem[];
}

/** Places of the mapped columns in a row. */
const columnKeys = [
  "date",
  "class",
  "fouled",
  "setAside",
  "screened",
  "quickCheck",
  "fullInspection",
] as const;

const nothing: BoatSums = { classes: [], quickCheck: undefined, fullInspection: undefined };

/**
 * Reads a log of boats and keeps sums alone: no line, and no column that is not mapped, stays. A line is a boat, or the
 * sum of several where a column says how many were screened.
 * @param classIds the vessel classes of the study
 */
export function readBoatLog(text: string, mapping: BoatColumnsMapped, classIds: readonly string[]): BoatLog {
  const keys = columnKeys.filter((key) => mapping[key] !== undefined);
  const table = exportTable(
    text,
    keys.flatMap((key) => mapping[key] ?? []),
  );
  if ("allowed" in table) return askedOnly([{ about: "columns", problem: table }]);
  const how = howToRead(table, keys, mapping, classIds);
  if ("asked" in how) return askedOnly(how.asked);
  const read = (row: ExportRow) => boatLine(row, how);
  const { lines, refused } = readRows(table, read, { one: "boat", needs: "a date and a class" });
  const sums = sumBoats(lines);
  return {
    sums,
    told: told(
      table,
      keys.map((key) => mapping[key] ?? ""),
      sums,
      lines.length,
    ),
    asked: [],
    refused,
  };
}

const askedOnly = (asked: readonly LogAsked[]): BoatLog => ({ sums: nothing, told: [], asked, refused: [] });

function howToRead(
  { rows, separator }: ExportTable,
  keys: readonly (typeof columnKeys)[number][],
  mapping: BoatColumnsMapped,
  classIds: readonly string[],
): LogReading | { readonly asked: readonly LogAsked[] } {
  const place = new Map(keys.map((key, index) => [key, index]));
  const order = mapping.dates ? { order: mapping.dates } : orderOf(rows, 0);
  const minutes = (["quickCheck", "fullInspection"] as const).flatMap((key) => place.get(key) ?? []);
  const decimals = mapping.decimals ? { decimals: mapping.decimals } : decimalsOf(rows, minutes, separator);
  const classes = new Map([
    ...classIds.map((id) => [id, id] as const),
    ...Object.entries(mapping.classes).map(([word, id]) => [sameName(word), id] as const),
  ]);
  const unknown = unknownClasses(rows, classes, classIds);
  const asked: LogAsked[] = [
    ...("asked" in order ? [{ about: "dates" as const, problem: order.asked }] : []),
    ...("asked" in decimals ? [{ about: "decimals" as const, problem: decimals.asked }] : []),
    ...(unknown ? [unknown] : []),
  ];
  if (asked.length > 0 || "asked" in order || "asked" in decimals) return { asked };
  return {
    ...{ order: order.order, decimals: decimals.decimals, classes },
    yes: new Set([...usualYes, ...mapping.yes.map(sameName)]),
    no: new Set([...usualNo, ...mapping.no.map(sameName)]),
    at: (key) => place.get(key),
  };
}

const usualYes = ["yes", "y", "true", "x", "1"];
const usualNo = ["no", "n", "false", "0", "-"];

/** Words for classes that nobody has mapped to a class of the study, or mapped to one that is none. */
const unknownClasses = (
  rows: ExportTable["rows"],
  classes: ReadonlyMap<string, string>,
  classIds: readonly string[],
): LogAsked | undefined =>
  wordsAsked(rows, {
    ...{ about: "classes", column: 1, isKnown: (word) => classIds.includes(classes.get(word) ?? "") },
    allowed: `words that are mapped to a vessel class of the study: ${classIds.join(", ")}`,
    remedy: "Say which class each word means.",
  });

function told(table: ExportTable, mapped: readonly string[], sums: BoatSums, lines: number): string[] {
  const { classes, quickCheck, fullInspection } = sums;
  return [
    `${counted(lines, "line")} summed: ${counted(total(classes, "screened"), "boat")} screened, ${total(classes, "setAside").toLocaleString("en-US")} held, ${total(classes, "fouled").toLocaleString("en-US")} with mussels.`,
    ...(quickCheck
      ? [
          `Quick checks took ${quickCheck.mean.toFixed(1)} min on average of ${counted(quickCheck.count, "boat")}.`,
        ]
      : []),
    ...(fullInspection
      ? [
          `Full inspections took ${fullInspection.mean.toFixed(1)} min on average of ${counted(fullInspection.count, "boat")}.`,
        ]
      : []),
    ...droppedTold(table, mapped),
  ];
}

const total = (classes: readonly ClassSum[], key: "screened" | "setAside" | "fouled"): number =>
  classes.reduce((sum, each) => sum + each[key], 0);
