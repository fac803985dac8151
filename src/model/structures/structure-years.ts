import { at, numbersBy, sumOf } from "../../lists.js";
import { remembered } from "../computed-once.js";
import { type CostLine, costLine } from "../money/line.js";
import type { ComponentResult, Priced, YearTable } from "./component.js";
import type { LakeContext } from "./context.js";
import { kindOf, type Structure } from "./kinds.js";
import { yearLike } from "./plans/course-months.js";
import { type GrowingYears, isThickIn, type SurfacePart, untouchedCourse } from "./plans/untouched.js";
import { endOf, firstAlike, firstOf, linesByYear, tableOf } from "./plans/year-table.js";
import type { LitterYear } from "./ramp.js";

/** Lines and where they come from; those of a part go under its name. */
export interface Origin {
  readonly part: string | undefined;
  readonly table: YearTable;
}

/** What a structure costs by year since establishment: its lines as they were told. */
export interface ToldYears {
  readonly count: number;
  readonly origins: readonly Origin[];
}

interface Worked {
  readonly growing: readonly GrowingYears[];
  readonly components: readonly Pick<ComponentResult, "name" | "told">[];
  readonly litter: readonly LitterYear[];
  readonly cleanEnergy: readonly number[];
}

export function toldYears(
  structure: Structure,
  { growing, components, litter, cleanEnergy }: Worked,
  context: LakeContext,
): ToldYears {
  const count = context.density.length / 12;
  const own = kindOf(structure).ownYears?.(structure, litter, context) ?? [];
  const origins: Origin[] = components.map(({ name, told }) => ({ part: name, table: told }));
  for (const years of [own, fixtureYears(structure, { growing, litter }, context)])
    if (years.length > 0) origins.push({ part: undefined, table: tableOf(years) });
  const told = { count, origins };
  return cleanEnergy.length === 0 ? told : withinEnergyMade(told, sumOf(cleanEnergy));
}

/**
 * A plant loses no more energy in a year than it makes: its parts are judged one by one, and where their losses
 * add up to more, each is cut in proportion.
 */
function withinEnergyMade(told: ToldYears, made: number): ToldYears {
  const { count, origins } = told;
  const lost = numbersBy(count, (year) => energyIn(origins, year));
  if (lost.every((energy) => energy <= made)) return told;
  const alike = firstAlike(tablesOf(origins), count);
  const cutOrigin = ({ part, table }: Origin): Origin => {
    const years = linesByYear(table);
    const cut = remembered((year: number) => cutLines(at(years, year), made, at(lost, year)));
    return { part, table: tableOf(years.map((_, year) => cut(at(alike, year)))) };
  };
  return { count, origins: origins.map(cutOrigin) };
}

function cutLines(lines: readonly Priced[], made: number, lost: number): readonly Priced[] {
  if (lost <= made) return lines;
  return lines.map((line) =>
    line.quantityKind === "energy" ? { ...line, quantity: (line.quantity * made) / lost } : line,
  );
}

function energyIn(origins: readonly Origin[], year: number): number {
  let energy = 0;
  for (const { table } of origins) {
    const list = at(table.lists, year);
    for (let line = firstOf(table, list); line < endOf(table, list); line++)
      if (table.charges[line]?.quantityKind === "energy") energy += at(table.quantities, line);
  }
  return energy;
}

const none: readonly Priced[] = [];

/**
 * Work on fixtures, by year: where a surface that nobody touches has a layer worth cleaning, or litter is there, since no
 * plan keeps them.
 */
function fixtureYears(
  structure: Structure,
  { growing, litter }: Pick<Worked, "growing" | "litter">,
  context: LakeContext,
): readonly (readonly Priced[])[] {
  if (structure.fixtures.length === 0) return [];
  const isFouled: boolean[] = [];
  for (let year = 0; year < context.density.length / 12; year++) isFouled.push((litter[year]?.mass ?? 0) > 0);
  const worthCleaning = context.assumed("cleaning.smallest-layer");
  for (const parts of growing) for (const part of parts) markFouled(isFouled, part, worthCleaning);
  const lines = isFouled.includes(true) ? fixtureLines(structure, context) : none;
  return isFouled.map((isWorked) => (isWorked ? lines : none));
}

/** Marks the years in which a surface that nobody touches has a layer worth cleaning, of a thickness in m. */
function markFouled(isFouled: boolean[], part: SurfacePart, worthCleaning: number): void {
  if (!isFouled.includes(false)) return;
  const course = untouchedCourse(1, part);
  if (course.firstWorth < 0) return;
  const isThick: boolean[] = [];
  for (let year = Math.floor(course.firstWorth / 12); year < isFouled.length; year++) {
    if (isFouled[year]) continue;
    const like = yearLike(course, year);
    isThick[like] ??= isThickIn(course, like, worthCleaning);
    isFouled[year] = isThick[like];
  }
}

/** Hours on gates, guides, gauges and drains in a year in which they foul. */
function fixtureLines(structure: Structure, { assumed }: LakeContext): Priced[] {
  return structure.fixtures.map((fixture) => ({
    what: `work on ${fixture.name}`,
    type: "work",
    quantity: fixture.count * fixture.hoursEach,
    quantityKind: "hours",
    unitRate: assumed("labour.maintenance-rate"),
    assumptionIds: ["labour.maintenance-rate"],
  }));
}

/** Cost lines of every year; a year that repeats all lists of an earlier one is the same list, and made once. */
export function costLinesByYear(structure: Structure, { count, origins }: ToldYears): readonly CostLine[][] {
  const lines = origins.map(({ table }) => linesByYear(table));
  const linesIn = remembered((year: number) =>
    origins.flatMap(({ part }, origin) =>
      at(at(lines, origin), year).map((line) => ownLine(structure, part, line)),
    ),
  );
  return firstAlike(tablesOf(origins), count).map(linesIn);
}

const tablesOf = (origins: readonly Origin[]) => origins.map(({ table }) => table);

function ownLine({ id, bearer }: Structure, part: string | undefined, line: Priced): CostLine {
  const { type, quantity, quantityKind, unitRate, assumptionIds } = line;
  const what = nameOf(part, line.what);
  return costLine({ structure: id, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds });
}

export const nameOf = (part: string | undefined, what: string): string =>
  part === undefined ? what : `${part}: ${what}`;
