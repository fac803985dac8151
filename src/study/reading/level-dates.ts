import { daysInYear, daysOf, monthOfDay, monthStart } from "../../model/lake/calendar.js";

/** A date of a record in the model's calendar: days are counted from 1 January of year 0, 365 to a year. */
export interface RecordDate {
  /** As typed: "2011-03-05" or "2011-03". Texts of one form sort by date. */
  readonly text: string;
  readonly form: DateForm;
  /** First and last day covered. */
  readonly firstDay: number;
  readonly lastDay: number;
  /** True for 29 February, which the model's year lacks. */
  readonly isLeapDay: boolean;
}

export type DateForm = "daily" | "monthly";

export const formTexts: Record<DateForm, string> = { daily: '"YYYY-MM-DD"', monthly: '"YYYY-MM"' };

const datePattern = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/;
const [earliestYear, latestYear] = [1800, 2200];

/** Reads a date. @returns the date, or what is allowed instead */
export function readDate(text: string): RecordDate | { readonly allowed: string } {
  const match = datePattern.exec(text);
  if (!match) {
    return {
      allowed: `a date written ${formTexts.daily}, or ${formTexts.monthly} in a record of monthly means`,
    };
  }
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const form = match[3] === undefined ? "monthly" : "daily";
  if (year < earliestYear || year > latestYear)
    return { allowed: `a year from ${earliestYear} to ${latestYear}` };
  if (month < 1 || month > 12) return { allowed: "a month from 01 to 12" };
  const start = year * daysInYear + monthStart(month - 1);
  if (form === "monthly") {
    return { text, form, firstDay: start, lastDay: start + daysOf(month - 1) - 1, isLeapDay: false };
  }
  const isLeapDay = month === 2 && day === 29 && isLeapYear(year);
  if (day < 1 || (day > daysOf(month - 1) && !isLeapDay)) return { allowed: "a day that the month has" };
  return { text, form, firstDay: start + day - 1, lastDay: start + day - 1, isLeapDay };
}

const isLeapYear = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

export const yearOf = (day: number): number => Math.floor(day / daysInYear);

/** A day as records write it, "2011-03-05", or only its month. */
export function dateText(day: number, form: DateForm): string {
  const month = monthOfDay(day);
  const parts = [yearOf(day), month + 1, (day % daysInYear) - monthStart(month) + 1];
  return parts
    .slice(0, form === "daily" ? 3 : 2)
    .map((part) => String(part).padStart(2, "0"))
    .join("-");
}

const shortMonths = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A day of the year in prose: "1 Oct". */
export function dayText(day: number): string {
  const month = monthOfDay(day);
  return `${(day % daysInYear) - monthStart(month) + 1} ${shortMonths[month]}`;
}

/** Longest gap that may be joined: a longer one would hide a season. */
export const longestFill = 92;
