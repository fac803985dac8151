import { at, sumOf } from "../lists.js";
import type { Assumed } from "./assumed.js";
import { type CostOfChances, costAtScales, costOfChances } from "./break-even/cost-of-chances.js";
import { once, withLater } from "./computed-once.js";
import type { YearlyCost } from "./cost-streams.js";
import type { InfestationCost } from "./infestation-cost.js";
import type { ProgramOption, StudyInput } from "./inputs.js";
import type { EnteredAccount } from "./money/account.js";
import { Money, noMoney } from "./money/decimal.js";
import { totalOf } from "./money/line.js";
import type { PriceGroup } from "./money/price-group.js";
import { type Rises, riseIn } from "./money/price-rises.js";
import { type CostSettings, type OptionCosts, optionCosts } from "./option-costs.js";
import { type CostWeights, costWeights, expectedLosses, noCost, presentValueOf } from "./present-value.js";
import { type Arrivals, arrivals } from "./program/arrivals.js";
import { type Containment, containmentOf, withContainment } from "./program/containment.js";
import { foundingChances } from "./program/founding-chances.js";
import { costShare, reachingInYears } from "./program/ramp-up.js";
import { weightedTotal } from "./risk/expectation.js";
import { type FoundingRates, type Reaching, yearlyHazard } from "./risk/hazard.js";
import { type StateProbabilities, stateProbabilities } from "./risk/state-probabilities.js";

interface CostPair {
  readonly program: Money;
  readonly infestation: Money;
  readonly total: Money;
}

export interface OptionResult extends OptionCosts {
  readonly arrivals: Arrivals;
  /** Chance of establishment in the first year, if the program ran in full. */
  readonly hazard: number;
  /** What reaches the water in each year of the horizon, more while the program grows. */
  readonly reachingByYear: readonly Reaching[];
  readonly statesByYear: readonly StateProbabilities[];
  /** Eradication attempts; their cost is part of that of the infestation. */
  readonly containment: Containment | undefined;
  readonly infestedByYear: readonly number[];
  /** A year of the program in full while the lake is clean. */
  readonly programPerYear: Money;
  /** A year of following the option's schedule, from the year in which mussels are noticed on. */
  readonly schedulePerYear: Money;
  readonly schedulePresentValue: Money;
  /** What a yearly cost of a group, paid while the lake is known to be infested, weighs in the present value. */
  readonly knownWeight: (group: PriceGroup) => number;
  /** Made when asked for. */
  readonly expectedByYear: readonly CostPair[];
  /** Its totals in plain numbers; made when asked for. */
  readonly plainByYear: readonly number[];
  readonly presentValue: CostPair;
  /** Equal yearly amount with the same present value; made when asked for. */
  readonly equivalentYearly: CostPair;
  /** Made when asked for. */
  readonly undiscounted: CostPair;
  readonly weights: CostWeights;
  /** What it costs for any chances; made when asked for. */
  readonly ofChances: CostOfChances;
  /** What it costs at so many times the foundings of boats; made when asked for. */
  readonly atScale: (scale: number) => number;
  /** Made when asked for. */
  readonly infestationByBearer: ReadonlyArray<{ readonly id: string; readonly presentValue: Money }>;
  /** Expected present values of what staff entered, by account; the other losses are in no other sum. Made when asked for. */
  readonly presentValueByAccount: ReadonlyMap<EnteredAccount, Money>;
}

export interface OptionSettings extends CostSettings {
  readonly rates: FoundingRates;
}

/**
 * One option over the horizon: its chance of infestation, its program and the infestation that it still risks. The
 * program and the schedule cost K(t) = g(t) G (1 − H(t−1) + a H(t−1)) + O N(t) in year t, and the infestation what it
 * costs under the lake's own levels while it is unnoticed, under the option's from then on, and its attempts at
 * containment. G, O and what the infestation costs have the rises of their prices in them.
 */
export function optionResult(
  option: ProgramOption,
  input: StudyInput,
  source: Assumed,
  settings: OptionSettings,
): OptionResult {
  const { factors, rises } = settings;
  const costs = optionCosts(option, input, source, settings);
  const { schedule, unnoticed } = costs;
  const noticed = schedule.infestation;
  const risk = riskOf(costs, input, source, settings);
  const { statesByYear } = risk;
  const containment = containmentOf(option, input.money, statesByYear, settings);
  const { known, followed, program } = amountsByYear(costs, risk);
  const weights = costWeights(statesByYear, factors, rises);
  const spent = new Money(weightedTotal(program, factors));
  const present = pair(spent, infestationAt(costs, weights, containment?.presentValue));
  const knownWeight = (group: PriceGroup) =>
    factors.reduce((sum, factor, year) => sum + factor * at(known, year) * riseIn(group, year, rises), 0);
  const ofChances = once(() => costOfChances(costs, settings));
  const losses = once(() => lossesByYear(costs, statesByYear, containment, rises));
  const result = {
    ...costs,
    ...risk,
    containment,
    infestedByYear: statesByYear.map(({ infested }) => infested),
    programPerYear: totalOf(costs.programLines),
    schedulePerYear: totalOf(schedule.operating),
    schedulePresentValue: new Money(weightedTotal(followed, factors)),
    knownWeight,
    presentValue: present,
    weights,
  };
  return withLater(result, {
    plainByYear: () => program.map((cost, year) => cost + at(losses(), year)),
    expectedByYear: () => program.map((cost, year) => pair(new Money(cost), new Money(at(losses(), year)))),
    equivalentYearly: () => perYear(present, factors),
    undiscounted: () => {
      const whole = undiscountedWeights(statesByYear, settings);
      return pair(new Money(sumOf(program)), infestationAt(costs, whole, containment?.undiscounted));
    },
    ofChances,
    atScale: () => costAtScales(ofChances(), risk.reachingByYear, settings.rates),
    infestationByBearer: () => withContainment(byBearer(noticed, unnoticed, weights), containment),
    presentValueByAccount: () => byAccount(noticed, unnoticed, weights),
  });
}

const infestationAt = ({ schedule, unnoticed }: OptionCosts, by: CostWeights, attempts = noMoney): Money =>
  presentValueOf(schedule.infestation, by, unnoticed).plus(attempts);

/** Each year counts in full. */
const undiscountedWeights = (states: readonly StateProbabilities[], { factors, rises }: CostSettings) =>
  costWeights(
    states,
    factors.map(() => 1),
    rises,
  );

/** Expected amounts in each year of the horizon, in plain numbers. */
function amountsByYear(costs: OptionCosts, { statesByYear, knownBefore }: Risk) {
  const known = statesByYear.map(({ noticed }) => sumOf(noticed));
  const followed = costs.scheduleInYear.map((cost, year) => cost * at(known, year));
  const program = programByYear(costs, knownBefore).map((cost, year) => cost + at(followed, year));
  return { known, followed, program };
}

/** What an infestation and the attempts at containment are expected to cost in each year of the horizon, in plain numbers. */
function lossesByYear(
  { unnoticed, schedule }: OptionCosts,
  statesByYear: readonly StateProbabilities[],
  containment: Containment | undefined,
  rises: Rises,
): number[] {
  const losses = expectedLosses({ unnoticed, noticed: schedule.infestation }, statesByYear, rises);
  if (!containment) return losses;
  return losses.map((loss, year) => loss + at(containment.expectedByYear, year));
}

/** Present value for each bearer that pays in either: while mussels are noticed, or before. */
function byBearer(noticed: InfestationCost, unnoticed: InfestationCost, weights: CostWeights) {
  const ids = new Set([...noticed.byBearer, ...unnoticed.byBearer].map(({ id }) => id));
  const costOf = (cost: InfestationCost, id: string): YearlyCost =>
    cost.byBearer.find((bearer) => bearer.id === id) ?? noCost;
  return [...ids].map((id) => ({
    id,
    presentValue: presentValueOf(costOf(noticed, id), weights, costOf(unnoticed, id)),
  }));
}

function byAccount(noticed: InfestationCost, unnoticed: InfestationCost, weights: CostWeights) {
  const present = new Set([...noticed.byAccount.keys(), ...unnoticed.byAccount.keys()]);
  const costOf = (cost: InfestationCost, account: EnteredAccount) => cost.byAccount.get(account) ?? noCost;
  return new Map(
    [...present].map((account) => [
      account,
      presentValueOf(costOf(noticed, account), weights, costOf(unnoticed, account)),
    ]),
  );
}

interface Risk extends Pick<OptionResult, "arrivals" | "hazard" | "reachingByYear" | "statesByYear"> {
  /** Chance of being known to be infested at the start of each year. */
  readonly knownBefore: readonly number[];
}

/** A lake declared infested is so from the start: the hazard of its first year is 1. */
function riskOf(
  { option, detection }: OptionCosts,
  input: StudyInput,
  source: Assumed,
  settings: OptionSettings,
): Risk {
  const { boats, lake } = input;
  const passing = arrivals(boats, option, lake, source);
  const isInfested = lake.infestedSince !== undefined;
  const reachingByYear = reachingInYears(option, input, source, foundingChances(boats, source));
  const hazardIn = (reaching: Reaching, year: number) =>
    isInfested ? Number(year === 0) : yearlyHazard(reaching, year, settings.rates);
  const statesByYear = stateProbabilities(reachingByYear.map(hazardIn), detection);
  return {
    arrivals: passing,
    hazard: hazardIn({ launches: passing.slipThrough, foundings: passing.foundings }, 0),
    reachingByYear,
    statesByYear,
    knownBefore: statesByYear.map((_, year) => statesByYear[year - 1]?.known ?? Number(isInfested)),
  };
}

/** The program's cost runs in full while no mussels are known, and at the option's own share from then on. */
function programByYear({ option, programInYear }: OptionCosts, knownBefore: readonly number[]): number[] {
  const { share } = option.afterInfestation;
  return knownBefore.map(
    (known, year) => at(programInYear, year) * costShare(option, year) * (1 - known + known * share),
  );
}

function pair(program: Money, infestation: Money): CostPair {
  return { program, infestation, total: program.plus(infestation) };
}

function perYear({ program, infestation }: CostPair, factors: readonly number[]): CostPair {
  const sum = sumOf(factors);
  return pair(program.dividedBy(sum), infestation.dividedBy(sum));
}
