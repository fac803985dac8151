import type { Assumed } from "../assumed.js";
import { type RoughnessParameters, roughnessParameters } from "../hydraulics/fouled-pipe.js";
import type { Lake } from "../inputs.js";
import { dailyElevations, dryRuns } from "../lake/levels.js";
import { type Suitability, suitability } from "../lake/suitability.js";
import { type DryingParameters, dryingParameters } from "../mussels/drying.js";
import { type GrowthParameters, growthParameters } from "../mussels/layer.js";
import { densityShare, populationParameters } from "../mussels/population.js";
import { shellParameters } from "../mussels/shell.js";
import {
  type Place,
  type SettlementParameters,
  type Surface,
  type SurfaceMonth,
  settlementParameters,
  surfaceMonths,
} from "../mussels/surface.js";

/** What every structure of one lake shares: the water, the mussels and the price list. */
export interface LakeContext {
  readonly lake: Lake;
  readonly daily: readonly number[];
  readonly suitability: Suitability;
  /** Density over capacity times suitability by month since establishment, over the horizon. */
  readonly density: readonly number[];
  /** The same at its highest: what a plan is chosen for. */
  readonly matureDensity: number;
  readonly growth: GrowthParameters;
  readonly roughness: RoughnessParameters;
  readonly viscosity: number;
  readonly assumed: Assumed;
  readonly months: (surface: Surface) => SurfaceMonth[];
  /** Days of the longest dry run at a place; none where it floats. */
  readonly longestDryRun: (place: Place) => { startDay: number; days: number };
}

export function lakeContext(lake: Lake, years: number, assumed: Assumed): LakeContext {
  const daily = dailyElevations(lake.drawdown);
  const suited = suitability(lake, assumed);
  const density = monthlyDensity(lake, years, suited.weight, assumed);
  const drying: DryingParameters = dryingParameters(lake.species, assumed);
  const settlement: SettlementParameters = settlementParameters(lake, assumed);
  return {
    lake,
    daily,
    suitability: suited,
    density,
    matureDensity: Math.max(...density),
    growth: growthParameters(assumed, shellParameters(assumed), drying),
    roughness: roughnessParameters(assumed),
    viscosity: assumed("hydraulics.viscosity"),
    assumed,
    months: (surface) => surfaceMonths(surface, lake, daily, { settlement, drying }),
    longestDryRun: (place) => longestRun(place, daily),
  };
}

/** Mid-month values, so that year 0 is the first year after establishment. */
function monthlyDensity(lake: Lake, years: number, weight: number, assumed: Assumed): number[] {
  const parameters = populationParameters(lake, assumed);
  return Array.from(
    { length: years * 12 },
    (_, month) => weight * densityShare((month + 1 / 2) / 12, parameters),
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
