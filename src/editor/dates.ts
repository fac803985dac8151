import { monthNames } from "../study/format/month-names.js";
import type { UnitSystem } from "./amounts/units-offered.js";

const longest = 30;
const named =
  /^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?$|^(\d{1,2})(?:st|nd|rd|th|\.)?\s+([a-z]{3,9})\.?$/i;
const numbers = /^(\d{1,2})\s*[/.-]\s*(\d{1,2})\.?$/;
const daysOfMonths = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * A day of the year as the study writes it: "October 15", "15 Oct" and "10/15" are "10-15". Two numbers are month and day;
 * where only the second can be a month they are day and month, and where both can, metric studies have to say which.
 */
export function dayOfYear(text: string, system: UnitSystem): string | undefined {
  const typed = text.trim();
  if (typed.length > longest) return undefined;
  const [, before, dayAfter, dayBefore, after] = named.exec(typed) ?? [];
  const name = before ?? after;
  if (name !== undefined) return written(monthOf(name), Number(dayAfter ?? dayBefore));
  const [, one, other] = numbers.exec(typed) ?? [];
  if (one === undefined || other === undefined) return undefined;
  const [first, second] = [Number(one), Number(other)];
  if (first > monthNames.length) return written(second, first);
  const isOpen = system === "si" && second <= monthNames.length && first !== second && !typed.includes("-");
  return isOpen ? undefined : written(first, second);
}

/** "oct", "Oct", "October", "Sept": three letters or more of the English name. */
function monthOf(name: string): number {
  const typed = name.toLowerCase();
  return fullNames.findIndex((each) => each.startsWith(typed)) + 1;
}

const fullNames = [
  ...["january", "february", "march", "april", "may", "june", "july", "august"],
  ...["september", "october", "november", "december"],
];

const written = (month: number, day: number): string | undefined =>
  day >= 1 && day <= (daysOfMonths[month - 1] ?? 0) ? [month, day].map(twoDigits).join("-") : undefined;

const twoDigits = (value: number) => String(value).padStart(2, "0");

/** A date as the study writes it: "October 15, 2026", "15 Oct 2026" and "10/15/2026" are "2026-10-15". */
export function dateOf(text: string): string | undefined {
  const [, day = "", year] = /^(.{3,20}?)[\s,/.-]+(\d{4})$/.exec(text.trim().slice(0, longest + 1)) ?? [];
  const found = year === undefined ? undefined : dayOfYear(day, "us");
  return found && `${year}-${found}`;
}
