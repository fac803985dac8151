import { at, sumOf } from "../../lists.js";
import { once } from "../computed-once.js";
import { AmountError, type CostLine, costLine, roundedCents } from "../money/line.js";
import type { ComponentResult, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import { kindOf, type Structure } from "./kinds.js";
import { type GrowingYears, isThickIn, untouchedCourse } from "./plans/untouched.js";
import { endOf, firstOf, linesByYear, tableOf, type YearTable } from "./plans/year-table.js";
import type { LitterYear } from "./ramp.js";

/** Lines and where they come from; those of a part go under its name. */
interface Table {
  readonly part: string | undefined;
  readonly table: YearTable;
}

export interface Origin extends Table {
  /** Of each line, rounded once: see `costLine`. */
  readonly cents: readonly number[];
}

/** What a structure costs by year since establishment: its lines as they were told. */
export interface ToldYears {
  readonly count: number;
  readonly origins: readonly Origin[];
}

interface Worked {
  readonly growing: readonly GrowingYears[];
  readonly components: readonly ComponentResult[];
  readonly litter: readonly LitterYear[];
  readonly cleanEnergy: readonly number[];
}

/** @throws AmountError naming structure and line where one is no sum of money */
export function toldYears(
  structure: Structure,
  { growing, components, litter, cleanEnergy }: Worked,
  context: LakeContext,
): ToldYears {
  const count = context.density.length / 12;
  const own = kindOf(structure).ownYears?.(structure, litter, context) ?? [];
  const others = [own, fixtureYears(structure, { growing, litter }, context)];
  const tables: Table[] = [
    ...components.map(({ name, told }) => ({ part: name, table: told })),
    ...others.filter(({ length }) => length > 0).map((years) => ({ part: undefined, table: tableOf(years) })),
  ];
  const kept = cleanEnergy.length === 0 ? tables : withinEnergyMade(tables, count, sumOf(cleanEnergy));
  return {
    count,
    origins: kept.map(({ part, table }) => ({ part, table, cents: centsOf(structure, part, table) })),
  };
}

function centsOf({ id }: Structure, part: string | undefined, table: YearTable): number[] {
  const { charges, quantities, unitRates } = table;
  return charges.map(({ what }, line) => {
    const cents = roundedCents(at(quantities, line), at(unitRates, line));
    if (!Number.isSafeInteger(cents))
      throw new AmountError(id, nameOf(part, what), at(quantities, line) * at(unitRates, line));
    return cents;
  });
}

/**
 * A plant loses no more energy in a year than it makes: its parts are judged one by one, and where their losses
 * add up to more, each is cut in proportion.
 */
function withinEnergyMade(tables: readonly Table[], count: number, made: number): readonly Table[] {
  const lost = Array.from({ length: count }, (_, year) => energyIn(tables, year));
  if (lost.every((energy) => energy <= made)) return tables;
  const cut = (line: Priced, year: number): Priced => {
    const energy = at(lost, year);
    if (line.quantityKind !== "energy" || energy <= made) return line;
    return { ...line, quantity: (line.quantity * made) / energy };
  };
  return tables.map(({ part, table }) => ({
    part,
    table: tableOf(linesByYear(table).map((lines, year) => lines.map((line) => cut(line, year)))),
  }));
}

function energyIn(tables: readonly Table[], year: number): number {
  let energy = 0;
  for (const { table } of tables) {
    const list = table.lists[year];
    if (list === undefined) continue;
    for (let line = firstOf(table, list); line < endOf(table, list); line++)
      if (at(table.charges, line).quantityKind === "energy") energy += at(table.quantities, line);
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
  const worthCleaning = context.assumed("cleaning.smallest-layer");
  const courses = growing.flat().map((part) => once(() => untouchedCourse(1, part)));
  const lines = once(() => fixtureLines(structure, context));
  return Array.from({ length: context.density.length / 12 }, (_, year) => {
    const isFouled =
      courses.some((course) => isThickIn(course(), year, worthCleaning)) || (litter[year]?.mass ?? 0) > 0;
    return isFouled ? lines() : none;
  });
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
  const years: CostLine[][] = [];
  for (let year = 0; year < count; year++) {
    const same = years.findLastIndex((_, before) => isSame(origins, before, year));
    years.push(
      years[same] ??
        origins.flatMap(({ part }, origin) =>
          (at(lines, origin)[year] ?? none).map((line) => ownLine(structure, part, line)),
        ),
    );
  }
  return years;
}

const isSame = (origins: readonly Origin[], one: number, other: number): boolean =>
  origins.every(({ table: { lists } }) => lists[one] === lists[other]);

function ownLine({ id, bearer }: Structure, part: string | undefined, line: Priced): CostLine {
  const { type, quantity, quantityKind, unitRate, assumptionIds } = line;
  const what = nameOf(part, line.what);
  return costLine({ structure: id, what, type, bearer, quantity, quantityKind, unitRate, assumptionIds });
}

const nameOf = (part: string | undefined, what: string): string =>
  part === undefined ? what : `${part}: ${what}`;
