import type { Assumed } from "./assumed.js";
import type { InfestationCost } from "./infestation-cost.js";
import type { ProgramOption, StudyInput } from "./inputs.js";
import { at } from "./lake/calendar.js";
import { Money, totalOf } from "./money/line.js";
import type { PriceGroup } from "./money/price-group.js";
import { inEachYear, type Rises, riseIn } from "./money/rises.js";
import { type CostWeights, costWeights, expectedLosses, noCost, presentValueOf } from "./present-value.js";
import { type Arrivals, arrivals } from "./program/arrivals.js";
import { type ProgramLine, programLines } from "./program/cost.js";
import { costShare, slipThroughByYear } from "./program/ramp-up.js";
import { type CourseYear, followCourse, type Noticing, noticedAtOnce } from "./risk/course.js";
import { weightedSum } from "./risk/expectation.js";
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
  readonly infestedByYear: readonly number[];
  /** A year of the program in full while the lake is clean, with its lines. */
  readonly programLines: readonly ProgramLine[];
  readonly programPerYear: Money;
  /** The same in each year of the horizon, with the rises of its prices. */
  readonly programInYear: readonly Money[];
  /** What the lake costs under these levels once it is known to be infested. */
  readonly schedule: ScheduleResult;
  /** What it costs while nobody knows: under the lake's own levels. */
  readonly unnoticed: InfestationCost;
  /** A year of following the option's schedule, from the year in which mussels are noticed on. */
  readonly schedulePerYear: Money;
  /** The same in each year of the horizon, with the rises of its prices. */
  readonly scheduleInYear: readonly Money[];
  readonly schedulePresentValue: Money;
  /** What a yearly cost of a group, paid while the lake is known to be infested, weighs in the present value. */
  readonly knownWeight: (group: PriceGroup) => number;
  readonly expectedByYear: readonly CostPair[];
  readonly presentValue: CostPair;
  /** Equal yearly amount with the same present value. */
  readonly equivalentYearly: CostPair;
  readonly undiscounted: CostPair;
  readonly weights: CostWeights;
  readonly infestationByBearer: ReadonlyArray<{ readonly id: string; readonly presentValue: Money }>;
  readonly apartPresentValue: Money;
}

export interface OptionSettings {
  readonly schedules: readonly [ScheduleResult, ...ScheduleResult[]];
  readonly hazard: HazardParameters;
  readonly suitability: number;
  readonly factors: readonly number[];
  readonly rises: Rises;
}

/**
 * One option over the horizon: its chance of infestation, its program and the infestation that it still risks. The
 * program and the schedule cost K(t) = g(t) G (1 − H(t−1) + a H(t−1)) + O N(t) in year t, and the infestation what it
 * costs under the lake's own levels while it is unnoticed, under the option's from then on. G, O and what the
 * infestation costs have the rises of their prices in them.
 */
export function optionResult(
  option: ProgramOption,
  input: StudyInput,
  source: Assumed,
  settings: OptionSettings,
): OptionResult {
  const { factors, rises, schedules } = settings;
  const risk = riskOf(option, input, source, settings);
  const lines = programLines(option, input.money);
  const schedule = scheduleOf(option, schedules);
  const programInYear = inEachYear(lines, factors.length, rises);
  const scheduleInYear = inEachYear(schedule.operating, factors.length, rises);
  const { course } = risk;
  const known = course.map(({ noticed }) => noticed.reduce((sum, chance) => sum + chance, 0));
  const followed = scheduleInYear.map((cost, year) => cost.times(at(known, year)));
  const program = programByYear(programInYear, option, risk.knownBefore).map((cost, year) =>
    cost.plus(at(followed, year)),
  );
  const [{ infestation: unnoticed }] = schedules;
  const noticed = schedule.infestation;
  const losses = expectedLosses({ unnoticed, noticed }, course, rises).map((loss) => new Money(loss));
  const weights = costWeights(course, factors, rises);
  const allOnes = factors.map(() => 1);
  const infestationAt = (by: CostWeights) => presentValueOf(noticed, by, unnoticed);
  const present = pair(weightedSum(program, factors), infestationAt(weights));
  const knownWeight = (group: PriceGroup) =>
    factors.reduce((sum, factor, year) => sum + factor * at(known, year) * riseIn(group, year, rises), 0);
  return {
    option,
    ...risk,
    infestedByYear: course.map(({ infested }) => infested),
    programLines: lines,
    programPerYear: totalOf(lines),
    programInYear,
    schedule,
    unnoticed,
    schedulePerYear: totalOf(schedule.operating),
    scheduleInYear,
    schedulePresentValue: weightedSum(followed, factors),
    knownWeight,
    expectedByYear: program.map((cost, year) => pair(cost, at(losses, year))),
    presentValue: present,
    equivalentYearly: perYear(present, factors),
    undiscounted: pair(weightedSum(program, allOnes), infestationAt(costWeights(course, allOnes, rises))),
    weights,
    infestationByBearer: noticed.byBearer.map(({ id, ...cost }) => ({
      id,
      presentValue: presentValueOf(cost, weights, bearerOf(unnoticed, id) ?? noCost),
    })),
    apartPresentValue: weightedSum(unnoticed.apartByYear, weights.unnoticed).plus(
      weightedSum(noticed.apartByYear, weights.noticed),
    ),
  };
}

const bearerOf = ({ byBearer }: InfestationCost, id: string) => byBearer.find((bearer) => bearer.id === id);

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
  const noticing = noticedAtOnce;
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
function programByYear(
  inYear: readonly Money[],
  option: ProgramOption,
  knownBefore: readonly number[],
): Money[] {
  const { share } = option.afterInfestation;
  return knownBefore.map((known, year) =>
    at(inYear, year)
      .times(costShare(option, year))
      .times(1 - known + known * share),
  );
}

function pair(program: Money, infestation: Money): CostPair {
  return { program, infestation, total: program.plus(infestation) };
}

function perYear({ program, infestation }: CostPair, factors: readonly number[]): CostPair {
  const sum = factors.reduce((total, factor) => total + factor, 0);
  return pair(program.dividedBy(sum), infestation.dividedBy(sum));
}
