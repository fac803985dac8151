import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { lakeUnderSchedules, ratesOf, yearsSinceEstablishment } from "../compare.js";
import type { StudyInput } from "../inputs.js";
import type { EnteredAccount } from "../money/account.js";
import { discountFactors } from "../money/interest.js";
import { type Rises, risesOf } from "../money/price-rises.js";
import { type CostSettings, type OptionCosts, optionCosts } from "../option-costs.js";
import {
  accountNumbers,
  type CostByEstablishment,
  chancesByAge,
  costByEstablishment,
  numbersOf,
  type OptionNumbers,
  statesSince,
} from "../option-numbers.js";
import { foundingChances } from "../program/founding-chances.js";
import { reachingInYears } from "../program/ramp-up.js";
import { yearlyHazards } from "../risk/hazard.js";
import { goAlike, type StateProbabilities } from "../risk/state-probabilities.js";
import type { ScheduleResult } from "../schedules.js";
import { expectedCost, expectedCourse, productSum } from "./expected-course.js";
import { costOfEstablishment, infestedAtEnd, type OptionFuture, optionFuture } from "./future.js";

/** What an option costs in a lake as drawn by the year in which mussels establish, what of that is the program's, and
 * whether mussels are there at the end. */
interface OptionDraw {
  readonly numbers: OptionNumbers;
  /** How an infestation goes, by the years since it began: one list for options by which it goes alike. */
  readonly states: readonly StateProbabilities[];
  readonly costs: CostByEstablishment;
  readonly program: CostByEstablishment;
  readonly infested: CostByEstablishment;
  /** Of the costs, those that staff entered; the other losses are in no other. */
  readonly accounts: Readonly<Record<EnteredAccount, CostByEstablishment | undefined>>;
}

/** A part and the entry of the catalogue by which it is kept: the same at another interval is no other plan. */
export interface PartPlan {
  /** Id of the structure, and its name. */
  readonly structure: string;
  readonly structureName: string;
  readonly part: string;
  readonly plan: { readonly id: string; readonly name: string };
}

/** A lake as drawn, with the options in their order. */
interface LakeDraw {
  readonly suitability: number;
  readonly factors: readonly number[];
  readonly rises: Rises;
  readonly options: readonly OptionDraw[];
  /** How each part is kept in service under the lake's own levels, in the order of structures and parts. */
  readonly plans: readonly PartPlan[];
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
  const options: OptionDraw[] = [];
  for (const option of input.options) {
    const amounts = optionCosts(option, input, source, settings);
    const numbers = numbersOf(amounts, settings, input.lake.infestedSince !== undefined);
    const alike = options.find((each) => goAlike(each.numbers.detection, numbers.detection));
    options.push(optionDraw(numbers, alike?.states ?? statesSince(numbers), amounts, settings));
  }
  return {
    suitability: lake.suitability.weight,
    factors: settings.factors,
    rises: settings.rises,
    plans: plansOf(schedules[0]),
    options,
  };
}

function optionDraw(
  numbers: OptionNumbers,
  states: readonly StateProbabilities[],
  amounts: OptionCosts,
  settings: CostSettings,
): OptionDraw {
  const chances = chancesByAge(states, numbers.detection);
  const costs = costByEstablishment(numbers, chances);
  const ofAccount = (account: EnteredAccount) => {
    const entered = accountNumbers(account, numbers, amounts, settings);
    return entered && costByEstablishment(entered, chances);
  };
  return {
    numbers,
    states,
    costs,
    program: costByEstablishment(programOf(numbers), chances),
    infested: infestedAtEnd(costs),
    accounts: { duty: ofAccount("duty"), policy: ofAccount("policy"), other: ofAccount("other") },
  };
}

const plansOf = ({ structures }: ScheduleResult): PartPlan[] =>
  structures.flatMap(({ structure, components }) =>
    components.map(({ name, chosen: { plan } }) => ({
      structure: structure.id,
      structureName: structure.name,
      part: name,
      plan: { id: plan.entry.id, name: plan.entry.name },
    })),
  );

/** Chances of establishment of each option in each year of the horizon. */
export function drawnHazards(input: StudyInput, source: Assumed, { suitability }: LakeDraw): number[][] {
  const { boats, lake, money } = input;
  if (lake.infestedSince !== undefined) return input.options.map(() => knownFromTheStart(money.horizon));
  const chances = foundingChances(boats, source);
  const rates = ratesOf(input, suitability, source, chances);
  return input.options.map((option) => yearlyHazards(reachingInYears(option, input, source, chances), rates));
}

const knownFromTheStart = (years: number) => Array.from({ length: years }, (_, year) => Number(year === 0));

/** An option in a future. */
interface LakeFuture extends OptionFuture {
  /** Present cost of the program, luck left out. */
  readonly program: number;
  /** Chance that mussels establish at all within the horizon, and that they are there when it ends. */
  readonly everInfested: number;
  readonly infestedAtEnd: number;
  /** Expected present cost of what staff entered, by account; the other losses also as they come out. */
  readonly duty: number;
  readonly policy: number;
  readonly other: number;
  readonly otherCost: number;
}

/** The program and what its schedule of levels costs, without what an infestation does. */
const programOf = (numbers: OptionNumbers): OptionNumbers => ({
  ...numbers,
  losses: [],
  attemptInYear: numbers.attemptInYear.map(() => 0),
});

/** All options in one future. */
export function futureOf(
  lake: LakeDraw,
  hazards: readonly (readonly number[])[],
  luck: number,
): LakeFuture[] {
  return lake.options.map(({ costs, program, infested, accounts: { duty, policy, other } }, option) => {
    const chances = at(hazards, option);
    const course = expectedCourse(chances, costs.contained);
    const { expected, cost, establishment } = optionFuture(costs, chances, luck, course);
    return {
      expected,
      cost,
      establishment,
      program: expectedCost(program, course),
      everInfested: course.ever,
      infestedAtEnd: productSum(infested.established, course.begins),
      duty: duty ? productSum(duty.established, course.begins) : 0,
      policy: policy ? productSum(policy.established, course.begins) : 0,
      other: other ? productSum(other.established, course.begins) : 0,
      otherCost: other ? costOfEstablishment(other, chances, establishment) : 0,
    };
  });
}
