import type { Assumed } from "./assumed.js";
import type { InfestationCost, YearlyCost } from "./infestation-cost.js";
import type { ProgramOption, StudyInput } from "./inputs.js";
import { at } from "./lake/calendar.js";
import { Money, noMoney, totalOf } from "./money/line.js";
import { type Arrivals, arrivals } from "./program/arrivals.js";
import { type Containment, containmentOf, withContainment } from "./program/containment.js";
import { type ProgramLine, programLines } from "./program/cost.js";
import { noticingOf } from "./program/noticing.js";
import { costShare, slipThroughByYear } from "./program/ramp-up.js";
import { type CourseYear, followCourse, type Noticing } from "./risk/course.js";
import { type ByAge, expectedByYear, presentWeights, weightedSum } from "./risk/expectation.js";
import { type HazardParameters, yearlyHazard } from "./risk/hazard.js";
import type { ScheduleResult } from "./schedules.js";

export interface CostPair {
  readonly program: Money;
  readonly infestation: Money;
  readonly total: Money;
}

export interface OptionResult {
  readonly option: ProgramOption;
  readonly arrivals: Arrivals;
  /** Yearly chance of establishment once the program runs in full. */
  readonly hazard: number;
  /** Fouled launches that slip through in each year of the horizon, more while the program grows. */
  readonly slipThroughByYear: readonly number[];
  readonly noticing: Noticing;
  readonly course: readonly CourseYear[];
  /** Attempts to be rid of mussels; their cost is part of that of the infestation. */
  readonly containment: Containment | undefined;
  readonly infestedByYear: readonly number[];
  /** A year of the program in full while the lake is clean, with its lines. */
  readonly programLines: readonly ProgramLine[];
  readonly programPerYear: Money;
  /** What the lake costs under these levels once it is known to be infested. */
  readonly schedule: ScheduleResult;
  /** What it costs while nobody knows: under the lake's own levels. */
  readonly unnoticed: InfestationCost;
  /** A year of following the option's schedule, from the year in which mussels are noticed on. */
  readonly schedulePerYear: Money;
  readonly schedulePresentValue: Money;
  /** What a yearly cost, paid while the lake is known to be infested, weighs in the present value. */
  readonly knownWeight: number;
  readonly expectedByYear: readonly CostPair[];
  readonly presentValue: CostPair;
  /** Equal yearly amount with the same present value. */
  readonly equivalentYearly: CostPair;
  readonly undiscounted: CostPair;
  /** What a cost in each year of an infestation weighs in the expected present value. */
  readonly weights: ByAge;
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
 * program and the schedule cost K(t) = g(t) G (1 − H(t−1) + a H(t−1)) + O N(t) in year t, and the infestation what it
 * costs under the lake's own levels while it is unnoticed, under the option's from then on, and its attempts at
 * containment.
 */
export function optionResult(
  option: ProgramOption,
  input: StudyInput,
  source: Assumed,
  settings: OptionSettings,
): OptionResult {
  const { factors, schedules } = settings;
  const risk = riskOf(option, input, source, settings);
  const lines = programLines(option, input.money);
  const schedule = scheduleOf(option, schedules);
  const schedulePerYear = totalOf(schedule.operating);
  const { course } = risk;
  const known = course.map(({ noticed }) => noticed.reduce((sum, chance) => sum + chance, 0));
  const program = programByYear(totalOf(lines), option, risk.knownBefore).map((cost, year) =>
    cost.plus(schedulePerYear.times(at(known, year))),
  );
  const [{ infestation: unnoticed }] = schedules;
  const noticed = schedule.infestation;
  const containment = containmentOf(option, input.money, course, factors);
  const losses = expectedByYear(
    { unnoticed: plain(unnoticed.harm), noticed: plain(noticed.byYear) },
    course,
  ).map((loss, year) => new Money(loss).plus(containment?.expectedByYear[year] ?? noMoney));
  const weights = presentWeights(course, factors);
  const allOnes = factors.map(() => 1);
  const infestationAt = (by: ByAge, attempts = noMoney) =>
    presentValueOf(noticed, by, unnoticed).plus(attempts);
  const present = pair(weightedSum(program, factors), infestationAt(weights, containment?.presentValue));
  const knownWeight = factors.reduce((sum, factor, year) => sum + factor * at(known, year), 0);
  return {
    option,
    ...risk,
    containment,
    infestedByYear: course.map(({ infested }) => infested),
    programLines: lines,
    programPerYear: totalOf(lines),
    schedule,
    unnoticed,
    schedulePerYear,
    schedulePresentValue: schedulePerYear.times(knownWeight),
    knownWeight,
    expectedByYear: program.map((cost, year) => pair(cost, at(losses, year))),
    presentValue: present,
    equivalentYearly: perYear(present, factors),
    undiscounted: pair(
      weightedSum(program, allOnes),
      infestationAt(presentWeights(course, allOnes), containment?.undiscounted),
    ),
    weights,
    infestationByBearer: withContainment(byBearer(noticed, unnoticed, weights), containment),
    apartPresentValue: weightedSum(unnoticed.apartByYear, weights.unnoticed).plus(
      weightedSum(noticed.apartByYear, weights.noticed),
    ),
  };
}

/**
 * Expected present value of a yearly cost of an infestation: all of it while mussels are known, its harm before.
 * @param unnoticed the same cost before, where that differs
 */
export function presentValueOf(cost: YearlyCost, weights: ByAge, unnoticed: YearlyCost = cost): Money {
  return weightedSum(unnoticed.harm, weights.unnoticed).plus(weightedSum(cost.byYear, weights.noticed));
}

/** Present value for each bearer that pays in either: while mussels are noticed, or before. */
function byBearer(noticed: InfestationCost, unnoticed: InfestationCost, weights: ByAge) {
  const ids = new Set([...noticed.byBearer, ...unnoticed.byBearer].map(({ id }) => id));
  const costOf = (cost: InfestationCost, id: string): YearlyCost =>
    cost.byBearer.find((bearer) => bearer.id === id) ?? { byYear: [], harm: [], control: [] };
  return [...ids].map((id) => ({
    id,
    presentValue: presentValueOf(costOf(noticed, id), weights, costOf(unnoticed, id)),
  }));
}

const plain = (amounts: readonly Money[]) => amounts.map((amount) => amount.toNumber());

function scheduleOf({ schedule }: ProgramOption, schedules: OptionSettings["schedules"]): ScheduleResult {
  const found = schedules.find(({ id }) => id === schedule);
  if (!found) throw new Error(`options: no schedule has the id ${schedule}`);
  return found;
}

interface Risk
  extends Pick<OptionResult, "arrivals" | "hazard" | "slipThroughByYear" | "noticing" | "course"> {
  /** Chance of being known to be infested at the start of each year. */
  readonly knownBefore: readonly number[];
}

/** A lake declared infested is so from the start: the hazard of its first year is 1. */
function riskOf(option: ProgramOption, input: StudyInput, source: Assumed, settings: OptionSettings): Risk {
  const passing = arrivals(input.boats, option, input.lake, source);
  const hazardOf = (slipThrough: number) => yearlyHazard(slipThrough, settings.suitability, settings.hazard);
  const isInfested = input.lake.infestedSince !== undefined;
  const slipping = slipThroughByYear(option, passing, input, source);
  const noticing = noticingOf(option, input, settings.schedules[0], source);
  const hazards = slipping.map((boats, year) => (isInfested ? Number(year === 0) : hazardOf(boats)));
  const course = followCourse(hazards, noticing);
  return {
    arrivals: passing,
    hazard: isInfested ? 1 : hazardOf(passing.slipThrough),
    slipThroughByYear: slipping,
    noticing,
    course,
    knownBefore: course.map((_, year) => course[year - 1]?.known ?? Number(isInfested)),
  };
}

/** The program's cost runs in full while no mussels are known, and at the option's own share from then on. */
function programByYear(perYear: Money, option: ProgramOption, knownBefore: readonly number[]): Money[] {
  const { share } = option.afterInfestation;
  return knownBefore.map((known, year) =>
    perYear.times(costShare(option, year)).times(1 - known + known * share),
  );
}

function pair(program: Money, infestation: Money): CostPair {
  return { program, infestation, total: program.plus(infestation) };
}

function perYear({ program, infestation }: CostPair, factors: readonly number[]): CostPair {
  const sum = factors.reduce((total, factor) => total + factor, 0);
  return pair(program.dividedBy(sum), infestation.dividedBy(sum));
}
