import type { Assumed } from "../assumed.js";
import { remembered } from "../computed-once.js";
import { type RoughnessParameters, roughnessParameters } from "../hydraulics/fouled-pipe.js";
import { monthOfDay } from "../lake/calendar.js";
import type { Lake } from "../lake/lake.js";
import { dailyElevations, dryRuns, type LevelsOfYear, levelsOfYear } from "../lake/levels.js";
import { type Suitability, suitability } from "../lake/suitability.js";
import { deadlyByMonth, dryingParameters } from "../mussels/drying.js";
import { groundKills, type Heights, type KilledOver } from "../mussels/exposed-band.js";
import { type GrowingSurface, growingSurfaces } from "../mussels/growing-surfaces.js";
import { type GrowthParameters, growthParameters } from "../mussels/growth.js";
import { densityShare, populationParameters, settledMonth } from "../mussels/population.js";
import { shellParameters } from "../mussels/shell.js";
import { type Place, type Surface, settlementParameters, surfaceMonths } from "../mussels/surface.js";
import type { InstalledPlan, PlanEntry } from "./catalogue.js";
import { disposalRateOf } from "./disposal-rate.js";
import { type InstallationPrices, installationPrices } from "./installation-prices.js";
import { type FoundMonths, foundMonths } from "./plans/found.js";
import type { PlanWeights } from "./plans/weights.js";
import { spawningMonths } from "./spawning.js";

/** What every structure of one lake shares in one possible operating year: the water, the mussels, the prices. */
export interface LakeContext {
  readonly lake: Lake;
  readonly daily: readonly number[];
  /** Mean level of each month. */
  readonly monthlyLevels: readonly number[];
  /** Names the year of the record in messages: " in 2012"; empty for a schedule. */
  readonly levelLabel: string;
  readonly suitability: Suitability;
  /** Density over capacity times suitability by month since establishment, over the horizon. */
  readonly density: readonly number[];
  /** The same at its highest: what a plan is chosen for. */
  readonly matureDensity: number;
  /** First month since establishment from which the density no longer changes. */
  readonly settledMonth: number;
  /** Months of the year in which larvae settle, in their order. */
  readonly spawningMonths: readonly number[];
  readonly growth: GrowthParameters;
  readonly roughness: RoughnessParameters;
  readonly viscosity: number;
  readonly assumed: Assumed;
  /** The catalogue of protection plans. */
  readonly plans: readonly PlanEntry[];
  /** What an installation of a plan costs by its size. */
  readonly installation: (entry: InstalledPlan) => InstallationPrices;
  /** What a cost in each year since establishment weighs in the choice of a plan. */
  readonly planWeights: PlanWeights;
  readonly found: FoundMonths;
  readonly disposalRate: () => number;
  readonly growing: (surface: Surface) => GrowingSurface;
  /** What drying and frost kill between two elevations in each year since establishment. */
  readonly killedBetween: (heights: Heights) => KilledOver;
  /** The same in each of so many years of a mature infestation that starts on bare ground. */
  readonly killedWhenMature: (years: number) => (heights: Heights) => KilledOver;
  /** Days of the longest dry run at a place; none where it floats. */
  readonly longestDryRun: (place: Place) => { startDay: number; days: number };
}

/** The possible operating years of a lake. */
export type Contexts = readonly [LakeContext, ...LakeContext[]];

interface UpkeepSettings {
  readonly plans: readonly PlanEntry[];
  /** Real rate at which installations are paid off. */
  readonly discountRate: number;
  /** Reads what structures take. */
  readonly assumed: Assumed;
  readonly planWeights: PlanWeights;
}

/** Levels that a lake may have. */
type Levels = Pick<Lake, "drawdown" | "record">;

/** A lake under any levels: mussels, prices and habitat are the same under all. */
export interface LakeWater {
  /** One context for each possible operating year: the schedule's single one, or each year of the record. */
  readonly under: (levels: Levels) => Contexts;
  /** Lets go of what was grown, once the structures are worked out; it is grown again when asked for. */
  readonly forgetGrown: () => void;
}

/**
 * Contexts are literals without a spread: the engine gives objects made by one shapes of their own, and reads them slowly.
 * @param reader reads what suitability, growth and drying take
 */
export function lakeWater(
  lake: Lake,
  years: number,
  reader: Assumed,
  { plans, discountRate, assumed, planWeights }: UpkeepSettings,
): LakeWater {
  const suited = suitability(lake, reader);
  const density = monthlyDensity(lake, years, suited.weight, reader);
  const drying = dryingParameters(lake.species, reader);
  const offered = { settlement: settlementParameters(lake, reader), deadly: deadlyByMonth(lake, drying) };
  const growth = growthParameters(reader, {
    shell: shellParameters(reader),
    drying,
    suitability: suited.weight,
  });
  const { surfaceOf, forget } = growingSurfaces(growth);
  const settled = settledMonth(density);
  const matureDensity = Math.max(...density);
  const spawning = spawningMonths(lake, reader);
  const roughness = roughnessParameters(reader);
  const installation = installationPrices(discountRate, assumed);
  const found = foundMonths(density, assumed("protection.start-density"), planWeights);
  const disposalRate = disposalRateOf(assumed);
  const ofYear = ({ label, daily }: OperatingYear, averaged: number): LakeContext => {
    const levels = levelsOfYear(daily);
    const monthsOf = (surface: Surface) =>
      surfaceMonths(surface, lake, levelsAt(surface.place, levels), offered);
    const kills = groundKills({ daily, averaged, monthsOf, growth });
    return {
      lake,
      daily,
      monthlyLevels: levels.monthly,
      levelLabel: label,
      suitability: suited,
      density,
      matureDensity,
      settledMonth: settled,
      spawningMonths: spawning,
      growth,
      roughness,
      viscosity: reader("hydraulics.viscosity"),
      assumed,
      plans,
      installation,
      planWeights,
      found,
      disposalRate,
      growing: (surface) => surfaceOf(monthsOf(surface)),
      killedBetween: kills(density, settled),
      killedWhenMature: (count) => kills(Array<number>(count * 12).fill(matureDensity), 0),
      longestDryRun: remembered((place) => longestRun(place, levelsAt(place, levels).daily)),
    };
  };
  return {
    under: (levels) => {
      const [first, ...rest] = operatingYearsOf(levels);
      const averaged = rest.length + 1;
      return [ofYear(first, averaged), ...rest.map((year) => ofYear(year, averaged))];
    },
    forgetGrown: forget,
  };
}

interface OperatingYear {
  /** Names the year of a record in messages; empty for a schedule. */
  readonly label: string;
  readonly daily: readonly number[];
}

function operatingYearsOf({ record, drawdown }: Levels): readonly [OperatingYear, ...OperatingYear[]] {
  const [first, ...rest] = record ?? [];
  if (first === undefined) return [{ label: "", daily: dailyElevations(drawdown) }];
  const ofRecord = ({ label, daily }: typeof first) => ({ label: ` in ${label}`, daily });
  return [ofRecord(first), ...rest.map(ofRecord)];
}

/**
 * Mid-month values, so that year 0 is the first year after establishment. A density within a ten-thousandth of
 * its last value counts as that value: from then on years repeat.
 */
function monthlyDensity(lake: Lake, years: number, weight: number, assumed: Assumed): number[] {
  const parameters = populationParameters(lake, assumed);
  const shareAt = (month: number) => densityShare((month + 1 / 2) / 12, parameters);
  const settled = densityShare(Infinity, parameters);
  return Array.from({ length: years * 12 }, (_, month) => {
    const share = shareAt(month);
    return weight * (Math.abs(share - settled) < settledTolerance ? settled : share);
  });
}

const settledTolerance = 1e-4;

/** The levels as a place lives through them: in months in which it is emptied the water stands below it. */
function levelsAt(place: Place, levels: LevelsOfYear): LevelsOfYear {
  if (place.at === "floating" || !place.drained) return levels;
  const { elevation, drained } = place;
  return levelsOfYear(
    levels.daily.map((level, day) =>
      drained.includes(monthOfDay(day)) ? Math.min(level, elevation - 1) : level,
    ),
  );
}

function longestRun(place: Place, daily: readonly number[]) {
  const none = { startDay: 0, days: 0 };
  if (place.at === "floating") return none;
  return dryRuns(daily, place.elevation).reduce(
    (longest, run) => (run.days > longest.days ? run : longest),
    none,
  );
}
