import { at } from "../../lists.js";
import { months } from "../../model/lake/calendar.js";
import { monthNames } from "../format/month-names.js";

/** Values by the names of months. */
export const byMonth = <T>(each: (month: number) => T): Record<string, T> =>
  Object.fromEntries(months.map((month) => [at(monthNames, month), each(month)]));

/** A year's rise and fall: 1 at the peak, 0 half a year from it. @param month from 0; @param peak counted from 1 */
export const season = (month: number, peak: number, sharpness = 1): number =>
  ((1 + Math.cos((2 * Math.PI * (month + 1 - peak)) / months.length)) / 2) ** sharpness;

/** The same, with a least value above 0 and exactly 1 in its largest month. */
export function seasonShape({
  peak,
  sharpness,
  least,
}: {
  readonly peak: number;
  readonly sharpness: number;
  readonly least: number;
}): number[] {
  const rise = months.map((month) => season(month, peak, sharpness));
  const largest = Math.max(...rise);
  return rise.map((each) => least + ((1 - least) * each) / largest);
}

/** Shapes of which next to nothing is left of a month have nothing in it. */
const nothing = 0.005;

/** Shares of a year by month, which make up 1. */
export function yearShares(shape: readonly number[]): number[] {
  const kept = shape.map((each) => (each < nothing ? 0 : each));
  const sum = kept.reduce((total, each) => total + each, 0);
  return kept.map((each) => each / sum);
}
