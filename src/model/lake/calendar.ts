/** A common year of 365 days; 29 February is left out of the model. */
export const monthDays = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
export const daysInYear = 365;
export const hoursPerDay = 24;
export const secondsPerDay = 86_400;
export const months = Array.from({ length: 12 }, (_, month) => month);

const monthStarts = months.map((month) => monthDays.slice(0, month).reduce((sum, days) => sum + days, 0));

/** First day of a month, 0 = 1 January. */
export const monthStart = (month: number): number => at(monthStarts, month);

const monthOfEachDay = months.flatMap((month) => Array<number>(at(monthDays, month)).fill(month));

/** Month 0 to 11 of a day of the year; days past the year's end wrap round. */
export const monthOfDay = (day: number): number => at(monthOfEachDay, day % daysInYear);

/** Days in a month. */
export const daysOf = (month: number): number => at(monthDays, month % 12);

/** The element at `index`, or an error that names the index: for lists whose length the model guarantees. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  return list[index] ?? noElement(list, index);
}

/**
 * The error of `at`. Inner loops read `list[index] ?? noElement(list, index)` themselves: the engine reads each kind of
 * list in its own fast way where it sees one kind only, and `at` is given all of them.
 */
export function noElement(list: ArrayLike<unknown>, index: number): never {
  throw new RangeError(`no element ${index} in a list of ${list.length}`);
}

/** A value for each month, from January to December. */
export type ByMonth<T = number> = readonly T[];
