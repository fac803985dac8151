import { at, noElement, sumOf } from "../../lists.js";

/** A common year of 365 days; 29 February is left out of the model. */
export const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
export const daysInYear = 365;
export const hoursPerDay = 24;
export const secondsPerDay = 86_400;
export const months = Array.from({ length: 12 }, (_, month) => month);

const monthStarts = months.map((month) => sumOf(monthDays.slice(0, month)));

/** First day of a month, 0 = 1 January. */
export const monthStart = (month: number): number => at(monthStarts, month);

const monthOfEachDay = months.flatMap((month) => Array<number>(at(monthDays, month)).fill(month));

/** Month 0 to 11 of a day of the year; days past the year's end wrap round. */
export const monthOfDay = (day: number): number =>
  monthOfEachDay[day % daysInYear] ?? noElement(monthOfEachDay, day);

/** Days in a month. */
export const daysOf = (month: number): number => monthDays[month % 12] ?? noElement(monthDays, month);

/** A value for each month, from January to December. */
export type ByMonth<T = number> = readonly T[];
