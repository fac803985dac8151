import { nextPlaces, type ShellTable } from "./shell-table.js";

/** The cohorts of a surface: how many live of each, and their places in the shell table. */
export interface Cohorts {
  readonly number: Float64Array;
  readonly place: Int32Array;
  count: number;
}

/** Sums over the cohorts of a surface, per m². */
export interface Colony {
  number: number;
  cover: number;
  mass: number;
  killed: number;
  /** Mass that died of age or was crowded off. */
  shed: number;
}

/** Element of a list of plain numbers whose length the caller guarantees; kept apart from `at` for its speed. */
const valueAt = (list: Float64Array, index: number): number => list[index] ?? 0;

/** One mussel to a square kilometre: fewer move no figure that is printed, and surfaces that dried out count as bare. */
const none = 1e-6;

/**
 * A month in the life of every cohort: the dry run kills, the rest thins and grows. The cohort that passes the last age
 * told apart joins the one that settled a year later, which is as long: they are kept as one. In place and in one pass:
 * this runs for each month of each plan.
 */
export function passMonth(
  cohorts: Cohorts,
  colony: Colony,
  table: ShellTable,
  monthlySurvival: number,
): void {
  let kept = 0;
  let oldest = 0;
  let oldestPlace = -1;
  let living = 0;
  let cover = 0;
  let mass = 0;
  let killed = 0;
  for (let index = 0; index < cohorts.count; index++) {
    const before = cohorts.place[index] ?? 0;
    const place = nextPlaces[before] ?? 0;
    let number = valueAt(cohorts.number, index);
    if (table.isEverDry) {
      const alive = number * valueAt(table.outlives, place);
      killed += (number - alive) * valueAt(table.massMet, place);
      number = alive;
    }
    number *= monthlySurvival;
    if (place < before) {
      oldest += number;
      oldestPlace = place;
      continue;
    }
    if (place === oldestPlace) {
      number += oldest;
      oldest = 0;
    }
    if (number <= none) continue;
    cohorts.number[kept] = number;
    cohorts.place[kept] = place;
    kept += 1;
    living += number;
    cover += number * valueAt(table.cover, place);
    mass += number * valueAt(table.mass, place);
  }
  cohorts.count = kept;
  colony.number = living;
  colony.cover = cover;
  colony.mass = mass;
  colony.killed = killed;
  if (oldest > none) settle(cohorts, colony, table, oldest, oldestPlace);
}

export function settle(
  cohorts: Cohorts,
  colony: Colony,
  table: ShellTable,
  number: number,
  place: number,
): void {
  if (number <= 0) return;
  cohorts.number[cohorts.count] = number;
  cohorts.place[cohorts.count] = place;
  cohorts.count += 1;
  colony.number += number;
  colony.cover += number * valueAt(table.cover, place);
  colony.mass += number * valueAt(table.mass, place);
}

export function shed(cohorts: Cohorts, colony: Colony, keptShare: number): void {
  for (let index = 0; index < cohorts.count; index++) {
    cohorts.number[index] = valueAt(cohorts.number, index) * keptShare;
  }
  colony.number *= keptShare;
  colony.cover *= keptShare;
  colony.mass *= keptShare;
}
