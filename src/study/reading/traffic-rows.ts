import { hoursPerDay } from "../../model/lake/calendar.js";
import type { RecordProblem } from "./contradiction.js";
import type { CsvLine } from "./csv-lines.js";
import type { TableLine } from "./csv-table.js";
import { readDate } from "./level-dates.js";
import { describe } from "./problems.js";

/** Launches counted in one hour, at one site if counts name sites. */
export interface HourCount {
  readonly line: number;
  readonly date: string;
  /** 0 to 11. */
  readonly month: number;
  readonly isWeekend: boolean;
  readonly hour: number;
  readonly launches: number;
  readonly site: string | undefined;
}

const needed = ["date", "hour", "launches"] as const;
const columns = [...needed, "site"] as const;
type Column = (typeof columns)[number];

/** Whether a column of that name holds counts. */
export const holdsLaunches = (name: string): boolean => name === "launches";

export const headerExample = needed.join(",");

/** Problems of the header of counts. */
export function headerProblems({ line, cells }: CsvLine): RecordProblem[] {
  const allowed = `the columns ${needed.join(", ")} and, if counted by site, site, each once, with commas, semicolons or tabs between`;
  const remedy = "Correct the header.";
  if (cells.length === 1) return [{ line, found: describe(cells[0]), allowed, remedy }];
  const count = (column: string) => cells.filter((name) => name === column).length;
  return [
    ...cells
      .filter((name) => !columns.some((column) => column === name))
      .map((name) => ({ line, found: `a column ${describe(name)}`, allowed, remedy })),
    ...needed
      .filter((column) => count(column) === 0)
      .map((column) => ({ line, found: `no column "${column}"`, allowed, remedy })),
    ...columns
      .filter((column) => count(column) > 1)
      .map((column) => ({ line, found: `"${column}" more than once`, allowed, remedy })),
  ];
}

const wholeNumber = /^(\d{1,6}|\d{1,3},\d{3})$/;

/** A parsed line of counts, or its problems. @param siteIds the sites of the study */
export function hourCount(
  { line, cells, problem }: TableLine,
  header: readonly string[],
  siteIds: readonly string[],
): { readonly row?: HourCount; readonly problems: readonly RecordProblem[] } {
  if (problem) return { problems: [problem] };
  const text = (column: Column) => cells[header.indexOf(column)] ?? "";
  const [date, hour] = [readDate(text("date")), Number(text("hour"))];
  const wrong = (column: Column, allowed: string) => cellProblem(line, column, text(column), allowed);
  const problems = [
    ...("allowed" in date ? [wrong("date", date.allowed)] : []),
    ...("form" in date && date.form === "monthly" ? [wrong("date", 'a day, written "YYYY-MM-DD"')] : []),
    ...(/^\d{1,2}$/.test(text("hour")) && hour < hoursPerDay
      ? []
      : [wrong("hour", `the hour in which the boats came, a whole number from 0 to ${hoursPerDay - 1}`)]),
    ...(wholeNumber.test(text("launches"))
      ? []
      : [wrong("launches", 'a whole number of launches such as 14 or "1,404"')]),
    ...(header.includes("site") && !siteIds.includes(text("site"))
      ? [wrong("site", `an id from boats.sites: ${siteIds.join(", ") || "there is none yet"}`)]
      : []),
  ];
  if (problems.length > 0 || "allowed" in date) return { problems };
  const launches = Number(text("launches").replaceAll(",", ""));
  return {
    row: {
      line,
      date: date.text,
      month: Number(date.text.slice(5, 7)) - 1,
      isWeekend: isWeekend(date.text),
      hour,
      launches,
      site: header.includes("site") ? text("site") : undefined,
    },
    problems,
  };
}

function cellProblem(line: number, column: Column, value: string, allowed: string): RecordProblem {
  const found = `${column} ${value === "" ? "nothing" : describe(value)}`;
  return { line, found, allowed, remedy: value === "" ? "Add it." : "Correct this value." };
}

/** Saturday or Sunday in the Gregorian calendar. */
function isWeekend(date: string): boolean {
  const day = new Date(`${date}T00:00:00Z`).getUTCDay();
  return day === 0 || day === 6;
}
