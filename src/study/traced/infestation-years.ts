import { at } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import type { Money } from "../../model/money/decimal.js";
import { presentValueByAge } from "../../model/present-value.js";
import { yearlyMeans } from "../../model/risk/detection.js";

/** One year of an infestation under the lake's own levels. */
export interface InfestationYear {
  /** Density over capacity at its end, and on average over it. */
  readonly density: number;
  readonly meanDensity: number;
  /** All that it costs, once noticed, and the losses alone. */
  readonly cost: Money;
  readonly losses: Money;
  /** What a unit weighs in the present value without a program while mussels are known, and while nobody knows. */
  readonly noticedWeight: number;
  readonly unnoticedWeight: number;
  /** Its part of the expected present value. */
  readonly presentValue: number;
}

export function infestationYears({ lake, infestation, baseline, schedules }: Comparison): InfestationYear[] {
  const { weights } = baseline;
  const { byYear, harm } = infestation;
  const meanDensity = yearlyMeans(schedules[0].contexts[0].density).slice(-byYear.length);
  return presentValueByAge(infestation, weights).map((value, year) => ({
    density: at(lake.densityByYear, year),
    meanDensity: meanDensity[year] ?? 0,
    cost: at(byYear, year),
    losses: at(harm, year),
    noticedWeight: at(weights.noticed, year),
    unnoticedWeight: at(weights.unnoticed, year),
    presentValue: value.toNumber(),
  }));
}
