import { at } from "../../lists.js";
import type { CostLine } from "../../model/money/line.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { PathSheet } from "./path.js";

/** A line of a structure in one year since establishment. */
export interface YearLine {
  readonly line: CostLine;
  /** Counted from 0, the year of establishment. */
  readonly year: number;
}

/** A line by its words in a year; nothing where the structure has none then. */
export function lineIn({ years }: StructureResult, what: string, year: number): YearLine | undefined {
  const line = years[year]?.find((each) => each.what === what);
  return line && { line, year };
}

/** The first year in which a line costs at least half of what it costs in its dearest. */
export function firstGreatYear(result: StructureResult, what: string): YearLine | undefined {
  const lines = result.years.map((_, year) => lineIn(result, what, year));
  const dearest = Math.max(0, ...lines.map((each) => each?.line.cents ?? 0));
  return dearest === 0 ? undefined : lines.find((each) => (each?.line.cents ?? 0) >= dearest / 2);
}

const centsPerUnit = 100;

/** The last step of each path: the cost line as the comparison has it. */
export function lineStep(sheet: PathSheet, { line }: YearLine, currency: string): void {
  const name = "Cost of the line, quantity times rate";
  sheet.step({ name, symbol: "C", is: "q u", value: line.cents / centsPerUnit, unit: currency });
}

/** A sum over rows of a table. */
export const sumStep = (sheet: PathSheet, of: string, value: number, unit = ""): void =>
  sheet.step({ name: `Sum of ${of}`, symbol: "S", value, unit });

export const yearWords = ({ year }: YearLine): string => `year ${year + 1} of an infestation`;

/** Months of a course that a path shows in full, with the month from which the surface was bare. */
export interface Shown {
  readonly bareFrom: number;
  readonly from: number;
  readonly to: number;
}

/** The months of the line's year, of a surface that is bare when the lake is infested. */
export const wholeYear = ({ year }: YearLine): Shown => ({
  bareFrom: 0,
  from: year * 12,
  to: year * 12 + 12,
});

/** From the last cleaning before the year in which the course was last cleaned to the last in it. */
export function lastCleaned(cleaned: readonly number[]): (Shown & { readonly year: number }) | undefined {
  const last = cleaned.at(-1);
  if (last === undefined) return undefined;
  const year = Math.floor(last / 12);
  const before = cleaned.filter((month) => month < year * 12).at(-1);
  if (before === undefined) return undefined;
  return { bareFrom: before + 1, from: before + 1, to: at(cleaned, cleaned.length - 1) + 1, year };
}
