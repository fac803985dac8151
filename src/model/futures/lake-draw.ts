import type { Assumed } from "../assumed.js";
import { hazardParameters, lakeUnderSchedules, yearsSinceEstablishment } from "../compare.js";
import type { StudyInput } from "../inputs.js";
import { discountFactors } from "../money/interest.js";
import { risesOf } from "../money/rises.js";
import { optionCosts } from "../option-costs.js";
import {
  type CostByEstablishment,
  costByEstablishment,
  numbersOf,
  type OptionNumbers,
} from "../option-numbers.js";
import { arrivals } from "../program/arrivals.js";
import { slipThroughByYear } from "../program/ramp-up.js";
import { yearlyHazard } from "../risk/hazard.js";
import { type OptionFuture, optionFuture } from "./future.js";

/** A lake as drawn: what each option costs by the year in which mussels establish, in the order of the options. */
export interface LakeDraw {
  readonly suitability: number;
  readonly options: ReadonlyArray<{ readonly numbers: OptionNumbers; readonly costs: CostByEstablishment }>;
}

/** Works out the lake, its structures and all options for one set of values. */
export function lakeDraw(input: StudyInput, source: Assumed): LakeDraw {
  const { money } = input;
  const yearsInfested = yearsSinceEstablishment(input);
  const { schedules, lake } = lakeUnderSchedules({ input, yearsInfested, source });
  const settings = {
    schedules,
    factors: discountFactors(money.horizon, money.discountRate, money.timing),
    rises: risesOf(money.escalation ?? [], money.horizon, money),
  };
  return {
    suitability: lake.suitability.weight,
    options: input.options.map((option) => {
      const numbers = numbersOf(optionCosts(option, input, source, settings), settings);
      return { numbers, costs: costByEstablishment(numbers) };
    }),
  };
}

/** Chances of establishment of each option in each year of the horizon. */
export function drawnHazards(input: StudyInput, source: Assumed, { suitability }: LakeDraw): number[][] {
  const parameters = hazardParameters(input, source);
  return input.options.map((option) => {
    const full = arrivals(input.boats, option, input.lake, source);
    let last = { boats: 0, hazard: yearlyHazard(0, suitability, parameters) };
    return slipThroughByYear(option, full, input, source).map((boats, year) => {
      if (input.lake.infestedSince !== undefined) return Number(year === 0);
      if (boats !== last.boats) last = { boats, hazard: yearlyHazard(boats, suitability, parameters) };
      return last.hazard;
    });
  });
}

/** All options in one future. */
export function futureOf(
  lake: LakeDraw,
  hazards: readonly (readonly number[])[],
  luck: number,
): OptionFuture[] {
  return lake.options.map(({ costs }, option) => optionFuture(costs, hazards[option] ?? [], luck));
}
