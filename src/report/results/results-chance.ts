import type { SpreadRate } from "../../model/risk/chance-origins.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { chanceOf, type RulerChance, usedChance } from "../ramp/chance-ruler.js";

/** From what the yearly chance without a program comes, as chances a year; null where the lake is infested already. */
export function chanceJson({ chance, comparison, document }: StudyRun): object | null {
  if (!chance) return null;
  return {
    drivenBy: document.boats.chance.drivenBy,
    fouledLaunches: chance.fouledLaunches,
    classes: chance.classes,
    byLaunches: rateJson(chance.byLaunches),
    byLakes: rateJson(chance.byLakes),
    pooled: rateJson(chance.pooled),
    weightOfLaunches: chance.weightOfBoats,
    launchesForLakes: chance.launchesForLakes ?? null,
    otherWays: {
      ratePerYear: chance.unchecked + chance.checked,
      beyondChecks: chance.unchecked,
      checked: chance.checked,
    },
    learnedFactor: chance.learnedFactor,
    shareBeyondPrograms: chance.beyondPrograms,
    used: { ...tenthsJson(usedChance(chance, "")), hazard: comparison.baseline.hazard },
  };
}

const rateJson = (rate: SpreadRate): object => ({
  ratePerYear: rate.rate,
  logSpread: rate.spread,
  ...tenthsJson(chanceOf("", rate, false)),
});

const tenthsJson = ({ low, middle, high }: RulerChance): object => ({ p10: low, p50: middle, p90: high });
