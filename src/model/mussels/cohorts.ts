import { noElement } from "../../lists.js";
import { type ShellTable, yearsOfAge } from "./shell-table.js";
import type { SurfaceMonth } from "./surface.js";

/** What all surfaces of a lake share. */
export interface ColonyParameters {
  /** Settlers a month that live to be counted, in the season, at capacity on a bare surface, 1/m². */
  readonly settlersPerMonth: number;
  readonly yearlyMortality: number;
  /** Largest cover; crowding sheds what is beyond it. */
  readonly coverLimit: number;
}

/** The twelve months of a surface with what a mussel is at each age there. */
export interface ColonySurface {
  readonly months: readonly SurfaceMonth[];
  readonly table: ShellTable;
}

/** One mussel to a square kilometre: fewer move no figure that is printed, and surfaces that dried out count as bare. */
const none = 1e-6;

/**
 * The mussels of a square metre, from bare on. Each month of the season adds a cohort, of nobody where there is no room,
 * so that the cohorts of a month always have the ages of that month's row in the shell table.
 */
export interface Colony {
  /** Sums over the cohorts at the end of a month: live mussels, 1/m²; cover; live wet mass, kg/m². */
  number: number;
  cover: number;
  mass: number;
  /** Wet mass that the month killed by drying or frost, kg/m². */
  killed: number;
  /** Wet mass that died of age in the month or was crowded off, kg/m². */
  shed: number;
  readonly months: readonly SurfaceMonth[];
  readonly table: ShellTable;
  readonly parameters: ColonyParameters;
  /** Share that lives on for a month. */
  readonly survival: number;
  /** Live mussels of each cohort over the scale, 1/m², from the first to the end those that settled first at the front. */
  living: Float64Array;
  first: number;
  end: number;
  /** What is common to all cohorts: where nothing dries, all thin out alike. */
  scale: number;
  /** The smallest cohort of any mussels, over the scale, 1/m². */
  smallest: number;
}

/**
 * Data with functions and no class: the engine forgets how a class is laid out when no object of it is left, and with it
 * the translated code of the loops below.
 * @param living room for as many cohorts as months that it lives through
 */
export function bareColony(
  { months: conditions, table }: ColonySurface,
  parameters: ColonyParameters,
  living: Float64Array,
): Colony {
  return {
    number: 0,
    cover: 0,
    mass: 0,
    killed: 0,
    shed: 0,
    months: conditions,
    table,
    parameters,
    survival: Math.exp(-parameters.yearlyMortality / 12),
    living,
    first: 0,
    end: 0,
    scale: 1,
    smallest: Infinity,
  };
}

/** Whether the month's drying or frost left nobody alive. */
export const isBared = ({ number, killed }: Colony): boolean => number === 0 && killed > 0;

/** Live mussels of each cohort, 1/m², those that settled last at the front. */
export function cohortsOf({ living, first, end, scale }: Colony): number[] {
  return Array.from(living.subarray(first, end), (number) => number * scale).reverse();
}

/** The month told at `growTo`, before any cleaning. @param density lake-wide, over capacity, times suitability */
export function passMonth(colony: Colony, monthOfYear: number, density: number): void {
  const { months, survival } = colony;
  const { settlersPerMonth, coverLimit } = colony.parameters;
  const { settlement } = months[monthOfYear] ?? noElement(months, monthOfYear);
  colony.killed = 0;
  if (colony.end > colony.first) live(colony, monthOfYear, settlement > 0);
  const { cover, mass } = colony;
  colony.shed = mass > 0 ? mass * (1 / survival - 1) : 0;
  const crowding = cover / coverLimit;
  if (settlement > 0) settle(colony, settlersPerMonth * density * settlement * Math.max(0, 1 - crowding));
  if (crowding > 1) {
    colony.shed += colony.mass * (1 - 1 / crowding);
    keepShare(colony, 1 / crowding);
  }
}

/** Leaves the surface bare. */
export function clean(colony: Colony): void {
  colony.first = 0;
  colony.end = 0;
  colony.smallest = Infinity;
  colony.number = 0;
  colony.cover = 0;
  colony.mass = 0;
}

/** The cohort that passes the last age told apart joins the one that settled a year later, which is as long. */
function live(colony: Colony, monthOfYear: number, isSeason: boolean): void {
  const { living, table } = colony;
  const { isEverDry, cohorts } = table;
  if (isSeason && colony.end - colony.first === cohorts) {
    const next = colony.first + cohorts / yearsOfAge;
    living[next] = (living[next] ?? 0) + (living[colony.first] ?? 0);
    colony.first += 1;
  }
  const oldest = monthOfYear * cohorts + colony.end - 1 - colony.first;
  if (isEverDry) liveThroughDry(colony, oldest);
  else liveUnderWater(colony, oldest);
  while (colony.first < colony.end && living[colony.first] === 0) colony.first += 1;
}

/** All thin out alike and grow. @param oldest place of the oldest in the table */
function liveUnderWater(colony: Colony, oldest: number): void {
  const { living, first, end } = colony;
  const { cover: coverOf, mass: massOf } = colony.table;
  colony.scale *= colony.survival;
  colony.number *= colony.survival;
  if (colony.smallest * colony.scale <= none) leaveOutFew(colony);
  let place = oldest;
  let cover = 0;
  let mass = 0;
  for (let cohort = first; cohort < end; cohort++, place--) {
    const left = living[cohort] ?? 0;
    cover += left * (coverOf[place] ?? 0);
    mass += left * (massOf[place] ?? 0);
  }
  colony.cover = cover * colony.scale;
  colony.mass = mass * colony.scale;
}

function leaveOutFew(colony: Colony): void {
  const { living, first, end, scale } = colony;
  colony.number = 0;
  colony.smallest = Infinity;
  colony.scale = 1;
  for (let cohort = first; cohort < end; cohort++) {
    const number = (living[cohort] ?? 0) * scale;
    living[cohort] = number > none ? number : 0;
    if (number <= none) continue;
    colony.number += number;
    colony.smallest = Math.min(colony.smallest, number);
  }
}

/** The dry run kills, the rest thins and grows. @param oldest place of the oldest in the table */
function liveThroughDry(colony: Colony, oldest: number): void {
  const { living, first, end, survival } = colony;
  const { cover: coverOf, mass: massOf, outlives, massMet } = colony.table;
  let place = oldest;
  let number = 0;
  let cover = 0;
  let mass = 0;
  let killed = 0;
  for (let cohort = first; cohort < end; cohort++, place--) {
    const before = living[cohort] ?? 0;
    const alive = before * (outlives[place] ?? 0);
    killed += (before - alive) * (massMet[place] ?? 0);
    const left = alive * survival > none ? alive * survival : 0;
    living[cohort] = left;
    number += left;
    cover += left * (coverOf[place] ?? 0);
    mass += left * (massOf[place] ?? 0);
  }
  colony.number = number;
  colony.cover = cover;
  colony.mass = mass;
  colony.killed = killed;
}

function settle(colony: Colony, settlers: number): void {
  const { cover, mass } = colony.table.settler;
  if (colony.end === colony.first) colony.scale = 1;
  const living = settlers / colony.scale;
  colony.living[colony.end] = living;
  colony.end += 1;
  if (living > 0 && living < colony.smallest) colony.smallest = living;
  colony.number += settlers;
  colony.cover += settlers * cover;
  colony.mass += settlers * mass;
}

/** Crowding sheds the same share of all. */
function keepShare(colony: Colony, share: number): void {
  const { living, first, end } = colony;
  if (colony.table.isEverDry) {
    for (let cohort = first; cohort < end; cohort++) living[cohort] = (living[cohort] ?? 0) * share;
  } else colony.scale *= share;
  colony.number *= share;
  colony.cover *= share;
  colony.mass *= share;
}
