import { noElement } from "../../../lists.js";
import { type GrownMonths, layerAt, thicknessAt } from "../../mussels/grown-months.js";
import type { Layer } from "../../mussels/layer.js";

/** What a part lives through under a plan, month by month since establishment. */
export interface Course {
  /** Months that are told, in whole years: as far as years do not repeat. */
  readonly months: number;
  /** The last years of them, which come again and again from there on; 0 where they are the whole horizon. */
  readonly cycle: number;
  /** What grows from establishment on, and the months of it at whose end the surface was cleaned. */
  readonly grown: GrownMonths;
  readonly cleaned: readonly number[];
  /** Where it is cleaned on dates: what grows after each, in place of that, from the first on. */
  readonly dated: DatedRuns;
}

interface DatedRuns {
  readonly first: number;
  readonly every: number;
  /** By date, each begun when somebody asks for it. */
  readonly runs: GrownMonths[];
  readonly begin: (start: number) => GrownMonths;
}

/** After all months, as a whole number: with Infinity the engine would take months for fractions. */
const never = 1e9;
const undated: DatedRuns = { first: never, every: 1, runs: [], begin: () => noElement([], 0) };

/** A course that grows on from establishment. @param cleaned months at whose end the surface is cleaned */
export const courseFrom = (
  grown: GrownMonths,
  { months, cycle }: Pick<Course, "months" | "cycle">,
  cleaned: readonly number[] = [],
): Course => ({ months, cycle, grown, cleaned, dated: undated });

/** Whether the surface is cleaned at the end of a month that is told. */
export const isCleaned = ({ cleaned, dated: { first, every } }: Course, month: number): boolean =>
  month >= first ? (month - first) % every === 0 : cleaned.includes(month);

/** The first month at whose end it is cleaned; infinite where it never is. */
export const firstCleaned = ({ cleaned, dated: { first } }: Course): number =>
  first < never ? first : (cleaned[0] ?? Infinity);

/** The layer at the end of a month of a course, before any cleaning. */
export function layerIn(course: Course, month: number): Layer {
  const run = runIn(course, month);
  return layerAt(grownIn(course, run), month - startOf(course, run));
}

/** Thickness of that layer, m. */
export function thicknessIn(course: Course, month: number): number {
  const run = runIn(course, month);
  return thicknessAt(grownIn(course, run), month - startOf(course, run));
}

/** The run that a month of a course belongs to: 0 from establishment on, 1 after the first date, 2 after the next. */
export const runIn = ({ dated: { first, every } }: Course, month: number): number =>
  month <= first ? 0 : Math.floor((month - first - 1) / every) + 1;

/** First month of a run. */
export const startOf = ({ dated: { first, every } }: Course, run: number): number =>
  run === 0 ? 0 : first + 1 + (run - 1) * every;

export function grownIn(course: Course, run: number): GrownMonths {
  if (run === 0) return course.grown;
  const { runs, begin } = course.dated;
  const known = runs[run - 1] ?? begin(startOf(course, run));
  runs[run - 1] = known;
  return known;
}

/** The year of a course that a year since establishment is like. */
export function yearLike({ months, cycle }: Course, year: number): number {
  const known = months / 12;
  return year < known ? year : known - cycle + ((year - known) % cycle);
}

/** The month of a course that a month since establishment is like. */
export const monthLike = (course: Course, month: number): number =>
  yearLike(course, Math.floor(month / 12)) * 12 + (month % 12);
