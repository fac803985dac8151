import type { Assumed } from "./assumed.js";
import type { ProgramOption, StudyInput } from "./inputs.js";
import { at } from "./lake/calendar.js";
import { type CostLine, type Money, totalOf } from "./money/line.js";
import { type Arrivals, arrivals } from "./program/arrivals.js";
import { programLines } from "./program/cost.js";
import { expectedByYear, presentWeights, weightedSum } from "./risk/expectation.js";
import { establishmentByYear, type HazardParameters, infestedByYear, yearlyHazard } from "./risk/hazard.js";
import type { ScheduleResult } from "./schedules.js";

export interface CostPair {
  readonly program: Money;
  readonly infestation: Money;
  readonly total: Money;
}

export interface OptionResult {
  readonly option: ProgramOption;
  readonly arrivals: Arrivals;
  /** Yearly chance of establishment. */
  readonly hazard: number;
  readonly infestedByYear: readonly number[];
  /** A year of the program while the lake is clean, with its lines. */
  readonly programLines: readonly CostLine[];
  readonly programPerYear: Money;
  /** What the lake costs under these levels once it is infested. */
  readonly schedule: ScheduleResult;
  /** A year of following the option's schedule, from the year of establishment on. */
  readonly schedulePerYear: Money;
  readonly schedulePresentValue: Money;
  /** What a yearly cost from establishment on weighs in the present value. */
  readonly infestedWeight: number;
  readonly expectedByYear: readonly CostPair[];
  readonly presentValue: CostPair;
  /** Equal yearly amount with the same present value. */
  readonly equivalentYearly: CostPair;
  readonly undiscounted: CostPair;
  /** What a cost in the first, second, … year since establishment weighs in the expected present value. */
  readonly lossWeights: readonly number[];
  readonly infestationByBearer: ReadonlyArray<{ readonly id: string; readonly presentValue: Money }>;
  readonly apartPresentValue: Money;
}

export interface OptionSettings {
  readonly schedules: readonly [ScheduleResult, ...ScheduleResult[]];
  readonly hazard: HazardParameters;
  readonly suitability: number;
  readonly factors: readonly number[];
}

/**
 * One option over the horizon: its chance of infestation, its program and the infestation that it still risks. The
 * program and the schedule cost K(t) = G (1 − H(t−1) + a H(t−1)) + O H(t) in year t, and the infestation what it costs
 * under the option's own levels.
 */
export function optionResult(
  option: ProgramOption,
  input: StudyInput,
  source: Assumed,
  settings: OptionSettings,
): OptionResult {
  const passing = arrivals(input.boats, option, input.lake, source);
  const hazard = yearlyHazard(passing.slipThrough, settings.suitability, settings.hazard);
  const risk = riskOf(hazard, input);
  const lines = programLines(option, input.money);
  const weights = presentWeights(risk.establishment, settings.factors);
  const { factors } = settings;
  const schedule = scheduleOf(option, settings.schedules);
  const { infestation } = schedule;
  const schedulePerYear = totalOf(schedule.operating);
  const program = programByYear(totalOf(lines), option, risk.infestedBefore).map((cost, year) =>
    cost.plus(schedulePerYear.times(at(risk.infested, year))),
  );
  const infestedWeight = factors.reduce((sum, factor, year) => sum + factor * at(risk.infested, year), 0);
  const losses = expectedByYear(infestation.byYear, risk.hazard, input.money.horizon);
  const expected = program.map((cost, year) => pair(cost, at(losses, year)));
  const present = pair(weightedSum(program, factors), weightedSum(losses, factors));
  const allOnes = factors.map(() => 1);
  return {
    option,
    arrivals: passing,
    hazard,
    infestedByYear: risk.infested,
    programLines: lines,
    programPerYear: totalOf(lines),
    schedule,
    schedulePerYear,
    schedulePresentValue: schedulePerYear.times(infestedWeight),
    infestedWeight,
    expectedByYear: expected,
    presentValue: present,
    equivalentYearly: perYear(present, factors),
    undiscounted: pair(weightedSum(program, allOnes), weightedSum(losses, allOnes)),
    lossWeights: weights,
    infestationByBearer: weighEach(infestation.byBearer, weights),
    apartPresentValue: weightedSum(infestation.apartByYear, weights),
  };
}

function scheduleOf({ schedule }: ProgramOption, schedules: OptionSettings["schedules"]): ScheduleResult {
  const found = schedules.find(({ id }) => id === schedule);
  if (!found) throw new Error(`options: no schedule has the id ${schedule}`);
  return found;
}

interface Risk {
  readonly hazard: number;
  readonly establishment: readonly number[];
  readonly infested: readonly number[];
  /** Chance of being infested at the start of each year. */
  readonly infestedBefore: readonly number[];
}

/** A lake declared infested is so from the start: the hazard of its first year is 1. */
function riskOf(arrivalHazard: number, { lake, money }: StudyInput): Risk {
  const isInfested = lake.infestedSince !== undefined;
  const hazard = isInfested ? 1 : arrivalHazard;
  const infested = infestedByYear(hazard, money.horizon);
  return {
    hazard,
    establishment: establishmentByYear(hazard, money.horizon),
    infested,
    infestedBefore: infested.map((_, year) => infested[year - 1] ?? (isInfested ? 1 : 0)),
  };
}

/** The program's cost runs in full while the lake is clean and at the option's own share once it is infested. */
function programByYear(perYear: Money, option: ProgramOption, infestedBefore: readonly number[]): Money[] {
  const { share } = option.afterInfestation;
  return infestedBefore.map((infested) => perYear.times(1 - infested + infested * share));
}

function pair(program: Money, infestation: Money): CostPair {
  return { program, infestation, total: program.plus(infestation) };
}

function perYear({ program, infestation }: CostPair, factors: readonly number[]): CostPair {
  const sum = factors.reduce((total, factor) => total + factor, 0);
  return pair(program.dividedBy(sum), infestation.dividedBy(sum));
}

function weighEach(
  streams: ReadonlyArray<{ id: string; byYear: readonly Money[] }>,
  weights: readonly number[],
): Array<{ id: string; presentValue: Money }> {
  return streams.map(({ id, byYear }) => ({ id, presentValue: weightedSum(byYear, weights) }));
}
