import type { RecordProblem } from "../reading/contradiction.js";
import { readDate } from "../reading/level-dates.js";
import { describe } from "../reading/problems.js";
import type { ExportRow } from "./export-table.js";

/** Which of two numbers is the month in dates such as 03/04/2011. */
export type DateOrder = "month-first" | "day-first";
export const dateOrders: readonly DateOrder[] = ["month-first", "day-first"];

/** A date of an export, as records write it: "2011-03-05", or "2011-03" for a month. */
export interface ExportDate {
  readonly date: string;
  /** Whether the cell gives a time of the day as well: then several readings of a day are usual. */
  readonly hasTime: boolean;
}

const longestDate = 40;
const yearFirst = /^(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?(?:[T\s,]+(.+))?$/;
const packed = /^(\d{4})(\d{2})(\d{2})$/;
const yearLast = /^(\d{1,2})[-/.\s](\d{1,2})[-/.\s](\d{4})(?:[\s,]+(.+))?$/;
const monthOfYear = /^(\d{1,2})[-/.](\d{4})$/;
const dayNamed = /^(\d{1,2})[-.\s]+([a-z]{3,9})\.?[-,\s]+(\d{4})(?:[\s,]+(.+))?$/i;
const monthNamed = /^([a-z]{3,9})\.?\s+(\d{1,2}),?\s+(\d{4})(?:[\s,]+(.+))?$/i;

const monthStarts = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** Reads the dates of a column in one order. @returns the date, or what is allowed */
export function exportDate(
  text: string,
  order: DateOrder | undefined,
): ExportDate | { readonly allowed: string } {
  const parts = text.length > longestDate ? undefined : partsOf(text, order);
  if (!parts) return { allowed: "a date such as 2011-03-05, 3/5/2011, 5.3.2011 or 5 Mar 2011" };
  const { year, month, day, time } = parts;
  const date = [year, padded(month), ...(day === undefined ? [] : [padded(day)])].join("-");
  const checked = readDate(date);
  return "allowed" in checked ? checked : { date, hasTime: time !== undefined };
}

const padded = (part: string) => part.padStart(2, "0");

interface Parts {
  readonly year: string;
  readonly month: string;
  readonly day?: string | undefined;
  readonly time?: string | undefined;
}

function partsOf(text: string, order: DateOrder | undefined): Parts | undefined {
  const iso = yearFirst.exec(text) ?? packed.exec(text);
  if (iso) return { year: iso[1] ?? "", month: iso[2] ?? "", day: iso[3], time: iso[4] };
  const last = yearLast.exec(text);
  if (last) {
    const [first = "", second = ""] = last.slice(1);
    const [month, day] = order === "day-first" ? [second, first] : [first, second];
    return { year: last[3] ?? "", month, day, time: last[4] };
  }
  const ofYear = monthOfYear.exec(text);
  if (ofYear) return { year: ofYear[2] ?? "", month: ofYear[1] ?? "" };
  const named = dayNamed.exec(text);
  if (named) return namedParts(named[3], named[2], named[1], named[4]);
  const second = monthNamed.exec(text);
  return second ? namedParts(second[3], second[1], second[2], second[4]) : undefined;
}

function namedParts(year = "", name = "", day = "", time: string | undefined): Parts | undefined {
  const month = monthStarts.indexOf(name.slice(0, 3).toLowerCase()) + 1;
  return month === 0 ? undefined : { year, month: String(month), day, time };
}

/** What a column of dates says of their order. */
export type OrderFound =
  /** No date of it depends on the order. */
  | { readonly order: undefined; readonly told?: undefined }
  | { readonly order: DateOrder; readonly told: string }
  /** Some depend on it and none decides, or they contradict each other: the author has to say. */
  | { readonly asked: RecordProblem };

/** Finds the order of dates in a column; it is never guessed. */
export function orderOf(rows: readonly ExportRow[], column: number): OrderFound {
  const decisive = new Map<DateOrder, ExportRow>();
  let open: ExportRow | undefined;
  for (const row of rows) {
    const match = yearLast.exec((row.cells[column] ?? "").slice(0, longestDate));
    if (!match) continue;
    const [first, second] = [Number(match[1]), Number(match[2])];
    if (first !== second) open ??= row;
    if (first > 12 && second <= 12 && !decisive.has("day-first")) decisive.set("day-first", row);
    if (second > 12 && first <= 12 && !decisive.has("month-first")) decisive.set("month-first", row);
    if (decisive.size === 2) break;
  }
  if (!open) return { order: undefined };
  const [found, other] = [...decisive];
  if (found && !other) {
    const [order, { line, cells }] = found;
    return { order, told: `Dates have the ${orderWord(order)} first, as ${cells[column]} in line ${line}.` };
  }
  return { asked: asked(open, found?.[1], other?.[1], column) };
}

export const orderWord = (order: DateOrder): string => (order === "day-first" ? "day" : "month");

function asked(
  open: ExportRow,
  one: ExportRow | undefined,
  other: ExportRow | undefined,
  column: number,
): RecordProblem {
  const text = (row: ExportRow) => row.cells[column] ?? "";
  const remedy = "Say whether the month or the day comes first.";
  if (one && other) {
    const found = `${describe(text(one))} in line ${one.line} and ${describe(text(other))} in line ${other.line}, which have the day in different places`;
    return { line: other.line, found, allowed: "dates in one order", remedy };
  }
  const readings = dateOrders.flatMap((order) => {
    const read = exportDate(text(open), order);
    return "date" in read ? [`${read.date} with the ${orderWord(order)} first`] : [];
  });
  return {
    line: open.line,
    found: `${describe(text(open))}, which may be ${readings.join(" or ")}`,
    allowed: "dates that can be read in only one way",
    remedy,
  };
}
