import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { daysInYear, daysOf, hoursPerDay, monthOfDay, monthStart, months } from "../lake/calendar.js";
import type { Lake } from "../lake/lake.js";
import { type DryRun, dryRuns, type LevelsOfYear } from "../lake/levels.js";
import { degreeDays, waterTemperature } from "../lake/temperature.js";
import { addDose, type DeadlyHours, type DryDose, doseOf, noDose } from "./drying.js";

/** Where a layer grows, as the person who lists the structure knows it. */
export type Place =
  | {
      readonly at: "elevation";
      readonly elevation: number;
      /** Months of the year in which it is emptied, whatever the lake's level; none if absent. */
      readonly drained?: readonly number[] | undefined;
    }
  | { readonly at: "floating"; readonly depth: number };

/** Depth of a place under a level of the lake, m; 0 where the level lies below it. */
export const depthOf = (place: Place, level: number): number =>
  place.at === "floating" ? place.depth : Math.max(0, level - place.elevation);

export interface Surface {
  readonly place: Place;
  /** Water velocity along the surface by month, m/s; 0 for still water. */
  readonly velocity: readonly number[];
  /** Share of each month in which water runs along it at that velocity, where it stands at other times; 1 if left out. */
  readonly running?: readonly number[] | undefined;
}

/** One month of the conditions that a surface offers, the same every year. */
export interface SurfaceMonth {
  /** Share of the lake's settlers that this surface receives, 0 to 1. */
  readonly settlement: number;
  readonly degreeDays: number;
  /** Dose of a dry run before this month's part of it, and after. */
  readonly doseBefore: DryDose;
  readonly doseAfter: DryDose;
}

export const isEverDry = (months: readonly SurfaceMonth[]) =>
  months.some(({ doseAfter }) => doseAfter.drying > 0);

interface SettlementParameters {
  readonly spawningTemperature: number;
  readonly upperTemperature: number;
  readonly fullVelocity: number;
  readonly noVelocity: number;
  readonly standingDays: number;
  readonly fullDepth: number;
  readonly noDepth: number;
  readonly growthBaseTemperature: number;
}

/** Assumptions on settlement that each species has its own of. */
export const bySpecies = {
  zebra: {
    spawningTemperature: "settlement.spawning-temperature.zebra",
    fullDepth: "settlement.full-depth.zebra",
    noDepth: "settlement.no-depth.zebra",
  },
  quagga: {
    spawningTemperature: "settlement.spawning-temperature.quagga",
    fullDepth: "settlement.full-depth.quagga",
    noDepth: "settlement.no-depth.quagga",
  },
} as const;

export function settlementParameters(lake: Lake, assumed: Assumed): SettlementParameters {
  const own = bySpecies[lake.species];
  return {
    spawningTemperature: assumed(own.spawningTemperature),
    upperTemperature: assumed("settlement.upper-temperature"),
    fullVelocity: assumed("settlement.full-velocity"),
    noVelocity: assumed("settlement.no-velocity"),
    standingDays: assumed("settlement.standing-days"),
    fullDepth: assumed(own.fullDepth),
    noDepth: assumed(own.noDepth),
    growthBaseTemperature: assumed("shell.growth-base-temperature"),
  };
}

/**
 * 1 up to the velocity at which settlement is full, falling linearly to 0 where none is left:
 * φV = min(1, max(0, (V0 − V)/(V0 − V1))). Velocities: Claudi and Mackie 1994 (from memory).
 */
export function velocityFactor(velocity: number, parameters: SettlementParameters): number {
  return fallingShare(Math.abs(velocity), parameters.fullVelocity, parameters.noVelocity);
}

/**
 * 1 down to the depth of full settlement, falling linearly to 0 at the depth that mussels do not pass:
 * φy = min(1, max(0, (y0 − y)/(y0 − y1))). Depths of quagga: Lake Mead substrates (`mead-depth`), `powermag-2019`.
 */
export function depthFactor(depth: number, parameters: SettlementParameters): number {
  return fallingShare(depth, parameters.fullDepth, parameters.noDepth);
}

/**
 * Water that has stood for some days has spent its larvae, and later its oxygen and food. A day of running keeps it fresh
 * for that long: φS = min(1, r d), of the share of the month in which it runs. Nothing settles or grows where it stands
 * throughout.
 */
export function freshnessFactor(runningShare: number, standingDays: number): number {
  return Math.min(1, runningShare * standingDays);
}

function fallingShare(value: number, full: number, none: number): number {
  return Math.min(1, Math.max(0, (none - value) / (none - full)));
}

/**
 * The twelve months of a surface. Larvae come from the lake's surface water, so the spawning season follows the
 * surface temperature; growth follows the temperature at the surface's own depth. A floating surface keeps its
 * depth and is never dry. Share of the lake's settlers that the surface receives: s = φT φy φV φS φw, of season,
 * depth, velocity, fresh water and share of the month under water.
 */
export function surfaceMonths(
  { place, velocity, running }: Surface,
  lake: Lake,
  { daily, monthly }: LevelsOfYear,
  { settlement, deadly }: { settlement: SettlementParameters; deadly: readonly DeadlyHours[] },
): SurfaceMonth[] {
  const dry = place.at === "elevation" ? dryMonths(dryRuns(daily, place.elevation), deadly) : undefined;
  return months.map((month) => {
    const depth = depthOf(place, at(monthly, month));
    const fresh = freshnessFactor(running?.[month] ?? 1, settlement.standingDays);
    const share = dry ? (daysOf(month) - at(dry.days, month)) / daysOf(month) : 1;
    return {
      settlement:
        spawning(at(lake.surfaceTemperature, month), settlement) *
        depthFactor(depth, settlement) *
        velocityFactor(at(velocity, month), settlement) *
        fresh *
        share,
      degreeDays:
        degreeDays(waterTemperature(lake, month, depth), settlement.growthBaseTemperature, month) *
        fresh *
        share,
      doseBefore: dry?.before[month] ?? noDose,
      doseAfter: dry?.after[month] ?? noDose,
    };
  });
}

function spawning(
  temperature: number,
  { spawningTemperature, upperTemperature }: SettlementParameters,
): number {
  return temperature >= spawningTemperature && temperature <= upperTemperature ? 1 : 0;
}

/** What dry runs are to each month; undefined where there is none. */
interface DryMonths {
  /** Days above the water. */
  readonly days: readonly number[];
  /** The dose of the longest run that touches the month, before and after that month's days of it. */
  readonly before: readonly DryDose[];
  readonly after: readonly DryDose[];
}

function dryMonths(runs: readonly DryRun[], deadly: readonly DeadlyHours[]): DryMonths | undefined {
  if (runs.length === 0) return undefined;
  const dryDays = months.map(() => 0);
  const before = months.map(() => noDose);
  const after = months.map(() => noDose);
  for (const { startDay, days } of runs) {
    let dose = noDose;
    for (let past = 0; past < days; ) {
      const month = monthOfDay(startDay + past);
      const inMonth = Math.min(days - past, daysLeftInMonth(startDay + past));
      const grown = addDose(dose, doseOf(inMonth * hoursPerDay, at(deadly, month)));
      if (grown.drying - dose.drying >= at(after, month).drying - at(before, month).drying) {
        before[month] = dose;
        after[month] = grown;
      }
      dryDays[month] = at(dryDays, month) + inMonth;
      dose = grown;
      past += inMonth;
    }
  }
  return { days: dryDays, before, after };
}

function daysLeftInMonth(day: number): number {
  const month = monthOfDay(day);
  return monthStart(month) + daysOf(month) - (day % daysInYear);
}
