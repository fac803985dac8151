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
  /** Made when first needed: a band of a ramp that never dries needs none. */
  readonly table: ShellTable;
}

/** One mussel to a square kilometre: fewer move no figure that is printed, and surfaces that dried out count as bare. */
const none = 1e-6;

/**
 * The mussels of a square metre, from bare on. Each month of the season adds a cohort, of nobody where there is no room,
 * so that the cohorts of a month always have the ages of that month's row in the shell table.
 */
export class Colony {
  /** Sums over the cohorts at the end of a month: live mussels, 1/m²; cover; live wet mass, kg/m². */
  number = 0;
  cover = 0;
  mass = 0;
  /** Wet mass that the month killed by drying or frost, kg/m². */
  killed = 0;
  /** Wet mass that died of age in the month or was crowded off, kg/m². */
  shed = 0;
  readonly #months: readonly SurfaceMonth[];
  readonly #table: ShellTable;
  readonly #parameters: ColonyParameters;
  readonly #survival: number;
  /** Live mussels of each cohort over `#scale`, 1/m², those that settled first at the front. */
  readonly #living: Float64Array;
  #first = 0;
  #end = 0;
  /** What is common to all cohorts: where nothing dries, all thin out alike. */
  #scale = 1;
  /** The smallest cohort of any mussels, over `#scale`, 1/m². */
  #smallest = Infinity;

  /** @param months most that it lives through */
  constructor(surface: ColonySurface, parameters: ColonyParameters, months: number) {
    this.#months = surface.months;
    this.#table = surface.table;
    this.#parameters = parameters;
    this.#survival = Math.exp(-parameters.yearlyMortality / 12);
    this.#living = new Float64Array(months);
  }

  /** Whether the month's drying or frost left nobody alive. */
  get isBared(): boolean {
    return this.number === 0 && this.killed > 0;
  }

  /** Live mussels of each cohort, 1/m², those that settled last at the front. */
  get cohorts(): number[] {
    const living = this.#living.subarray(this.#first, this.#end);
    return Array.from(living, (number) => number * this.#scale).reverse();
  }

  /** The month told at `growLayers`, before any cleaning. @param density lake-wide, over capacity, times suitability */
  passMonth(monthOfYear: number, density: number): void {
    const months = this.#months;
    const { settlersPerMonth, coverLimit } = this.#parameters;
    const { settlement } = months[monthOfYear] ?? noElement(months, monthOfYear);
    this.killed = 0;
    if (this.#end > this.#first) this.#live(monthOfYear, settlement > 0);
    this.shed = this.mass > 0 ? this.mass * (1 / this.#survival - 1) : 0;
    const crowding = this.cover / coverLimit;
    if (settlement > 0) this.#settle(settlersPerMonth * density * settlement * Math.max(0, 1 - crowding));
    if (crowding > 1) {
      this.shed += this.mass * (1 - 1 / crowding);
      this.#keep(1 / crowding);
    }
  }

  /** Leaves the surface bare. */
  clean(): void {
    this.#first = 0;
    this.#end = 0;
    this.#scale = 1;
    this.#smallest = Infinity;
    this.number = 0;
    this.cover = 0;
    this.mass = 0;
    this.killed = 0;
  }

  /** The cohort that passes the last age told apart joins the one that settled a year later, which is as long. */
  #live(monthOfYear: number, isSeason: boolean): void {
    const { isEverDry, cohorts } = this.#table;
    const living = this.#living;
    if (isSeason && this.#end - this.#first === cohorts) {
      const next = this.#first + cohorts / yearsOfAge;
      living[next] = (living[next] ?? 0) + (living[this.#first] ?? 0);
      this.#first += 1;
    }
    const youngest = monthOfYear * cohorts;
    if (isEverDry) this.#liveThroughDry(youngest);
    else this.#liveUnderWater(youngest);
    while (this.#first < this.#end && living[this.#first] === 0) this.#first += 1;
  }

  /** All thin out alike and grow. @param youngest place of the youngest in the table */
  #liveUnderWater(youngest: number): void {
    const { cover: coverOf, mass: massOf } = this.#table;
    const living = this.#living;
    const end = this.#end;
    this.#scale *= this.#survival;
    this.number *= this.#survival;
    if (this.#smallest * this.#scale <= none) this.#leaveOutFew();
    let place = youngest + end - 1 - this.#first;
    let cover = 0;
    let mass = 0;
    for (let cohort = this.#first; cohort < end; cohort++, place--) {
      const left = living[cohort] ?? 0;
      cover += left * (coverOf[place] ?? 0);
      mass += left * (massOf[place] ?? 0);
    }
    this.cover = cover * this.#scale;
    this.mass = mass * this.#scale;
  }

  #leaveOutFew(): void {
    const living = this.#living;
    this.number = 0;
    this.#smallest = Infinity;
    for (let cohort = this.#first; cohort < this.#end; cohort++) {
      const number = (living[cohort] ?? 0) * this.#scale;
      living[cohort] = number > none ? number : 0;
      if (number <= none) continue;
      this.number += number;
      this.#smallest = Math.min(this.#smallest, number);
    }
    this.#scale = 1;
  }

  /** The dry run kills, the rest thins and grows. */
  #liveThroughDry(youngest: number): void {
    const { cover: coverOf, mass: massOf, outlives, massMet } = this.#table;
    const living = this.#living;
    const end = this.#end;
    let place = youngest + end - 1 - this.#first;
    let number = 0;
    let cover = 0;
    let mass = 0;
    let killed = 0;
    for (let cohort = this.#first; cohort < end; cohort++, place--) {
      const before = living[cohort] ?? 0;
      const alive = before * (outlives[place] ?? 0);
      killed += (before - alive) * (massMet[place] ?? 0);
      const left = alive * this.#survival > none ? alive * this.#survival : 0;
      living[cohort] = left;
      number += left;
      cover += left * (coverOf[place] ?? 0);
      mass += left * (massOf[place] ?? 0);
    }
    this.number = number;
    this.cover = cover;
    this.mass = mass;
    this.killed = killed;
  }

  #settle(settlers: number): void {
    const { cover, mass } = this.#table.settler;
    if (this.#end === this.#first) this.#scale = 1;
    const living = settlers / this.#scale;
    this.#living[this.#end] = living;
    this.#end += 1;
    if (living > 0 && living < this.#smallest) this.#smallest = living;
    this.number += settlers;
    this.cover += settlers * cover;
    this.mass += settlers * mass;
  }

  #keep(share: number): void {
    if (this.#table.isEverDry) {
      const living = this.#living;
      for (let cohort = this.#first; cohort < this.#end; cohort++)
        living[cohort] = (living[cohort] ?? 0) * share;
    } else this.#scale *= share;
    this.number *= share;
    this.cover *= share;
    this.mass *= share;
  }
}
