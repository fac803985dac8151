import { at, noElement } from "../../lists.js";
import {
  type CostByEstablishment,
  chancesByAge,
  costByEstablishment,
  statesSince,
} from "../option-numbers.js";
import type { Through } from "../program/founding-chances.js";
import { yearlyHazard } from "../risk/hazard.js";
import type { LakeTerms } from "./lake-terms.js";
import { deterredShare, metShare, type Variant } from "./variant.js";

/** A program of a search: its set of measures, what it meets, its hours, and how far it runs in each year. */
export interface Candidate {
  readonly set: number;
  /** Launches met over all launches, or over those that the option it starts from meets. */
  readonly coverage: Variant["coverage"];
  /** Hours of its stations over those of the option it starts from. */
  readonly hours: number;
  readonly years: readonly YearShare[];
}

/** How far a program runs in a year of the horizon: see `rampUp`. */
export interface YearShare {
  readonly reach: number;
  readonly cost: number;
}

/** Present costs of a lake's parts: of the infestation, and of the program in no hours, by its hours and by its fees. */
const parts = ["loss", "idle", "perHours", "fees"] as const;
type Parts = Record<(typeof parts)[number], number>;

export interface Evaluated {
  readonly loss: number;
  readonly program: number;
  readonly cost: number;
  readonly chance: number;
  /** Present cost in each lake. */
  readonly byLake: readonly number[];
}

/** Worked out for what a program meets, whatever its hours cost. */
export interface Met extends Readonly<Parts> {
  readonly chance: number;
  readonly at: (hours: number) => Evaluated;
}

export interface Evaluator {
  readonly met: (candidate: Omit<Candidate, "hours">) => Met;
  readonly of: (candidate: Candidate) => Evaluated;
  /** Programs that were worked out so far. */
  readonly count: () => number;
}

/** Expected costs and chances of programs over lakes; what was met before is at hand. */
export function evaluator(lakes: readonly LakeTerms[]): Evaluator {
  const prepared = lakes.map(courses);
  const known = new Map<string, Met>();
  const keys = new WeakMap<readonly YearShare[], string>();
  const keyOf = (years: readonly YearShare[]) => {
    const key = keys.get(years) ?? JSON.stringify(years);
    keys.set(years, key);
    return key;
  };
  const met = ({ set, coverage, years }: Omit<Candidate, "hours">): Met => {
    const share = "of" in coverage ? coverage.of : -coverage.times;
    const key = `${set} ${share} ${keyOf(years)}`;
    const found = known.get(key) ?? metOver(prepared.map((of) => of({ set, coverage, years })));
    known.set(key, found);
    return found;
  };
  return {
    met,
    of: ({ hours, ...candidate }) => met(candidate).at(hours),
    count: () => known.size,
  };
}

type LakeMeans = Parts & { chance: number };

function metOver(lakes: readonly LakeMeans[]): Met {
  const mean = (pick: (each: LakeMeans) => number) =>
    lakes.reduce((sum, each) => sum + pick(each), 0) / lakes.length;
  const [loss, idle] = [mean((each) => each.loss), mean((each) => each.idle)];
  const [perHours, fees] = [mean((each) => each.perHours), mean((each) => each.fees)];
  const chance = mean((each) => each.chance);
  return {
    ...{ loss, idle, perHours, fees, chance },
    at: (hours) => {
      const program = idle + fees + hours * perHours;
      const byLake = lakes.map((each) => each.loss + each.idle + each.fees + hours * each.perHours);
      return { loss, program, cost: loss + program, chance, byLake };
    },
  };
}

/** A lake's costs with a set of measures, whatever the program meets. */
interface Course {
  readonly loss: CostByEstablishment;
  /** Share of the program that goes on in each year of an infestation. */
  readonly kept: Float64Array;
  readonly factors: Float64Array;
  readonly program: Readonly<Record<"idle" | "perHours" | "fees", Float64Array>>;
}

/** Means over the futures of one lake, of any program. */
function courses(lake: LakeTerms): (candidate: Omit<Candidate, "hours">) => LakeMeans {
  const made = lake.programs.map(courseOf);
  return (candidate) => meansIn(lake, at(made, candidate.set), candidate);
}

function courseOf({ idle, hours, fees }: LakeTerms["programs"][number]): Course {
  const chances = chancesByAge(statesSince(idle), idle.detection);
  const none = idle.factors.map(() => 0);
  const last = idle.factors.length - 1;
  const inLastYear = costByEstablishment(
    {
      ...idle,
      factors: idle.factors.map(() => 1),
      programInYear: none.map((_, year) => Number(year === last)),
      losses: [],
      scheduleInYear: none,
      attemptInYear: none,
    },
    chances,
  );
  const beside = (amounts: readonly number[]) =>
    Float64Array.from(amounts, (amount, year) => amount - at(idle.programInYear, year));
  return {
    loss: costByEstablishment({ ...idle, programInYear: none }, chances),
    kept: Float64Array.from(inLastYear.established).reverse(),
    factors: Float64Array.from(idle.factors),
    program: {
      idle: Float64Array.from(idle.programInYear),
      perHours: beside(hours),
      fees: beside(fees),
    },
  };
}

/** Expected over the futures of a lake, each year: mussels that establish, a year that stays clean. Sums, not means. */
interface CourseSums {
  readonly established: Float64Array;
  readonly clean: Float64Array;
  readonly chance: number;
}

/**
 * The futures of a lake differ in their chances alone. With the chance S(t) to be clean when year t begins, S(t + 1) =
 * (1−h(t)) S(t) + Σ q(a) h(t+1−a) S(t+1−a), the loss is Σ h(t) S(t) D(t), and a year of the program weighs v(t) times
 * (1−h(t)) S(t) + Σ h(e) S(e) k(t−e) with k the share that goes on: the same as `costToGo`, sums over futures first.
 */
function meansIn(lake: LakeTerms, course: Course, candidate: Omit<Candidate, "hours">): LakeMeans {
  const { set, coverage, years } = candidate;
  const own = at(lake.programs, set).coverage;
  const met = metShare(coverage, own);
  const { established, clean, chance } = coursesOfLake(lake, course.loss.contained, { set, met, own, years });
  const count = lake.futures.length;
  const sums = { loss: 0, idle: 0, perHours: 0, fees: 0 };
  const { idle, perHours, fees } = course.program;
  for (let year = 0; year < years.length; year++) {
    const founded = established[year] ?? 0;
    sums.loss += (course.loss.established[year] ?? 0) * founded;
    let running = clean[year] ?? 0;
    for (let since = 0; since <= year; since++)
      running += (established[since] ?? 0) * (course.kept[year - since] ?? 0);
    const { cost } = years[year] ?? noElement(years, year);
    const weight = running * (course.factors[year] ?? 0) * cost;
    sums.idle += weight * (idle[year] ?? 0);
    sums.perHours += weight * (perHours[year] ?? 0);
    sums.fees += weight * (fees[year] ?? 0);
  }
  return {
    loss: sums.loss / count,
    idle: sums.idle / count,
    perHours: sums.perHours / count,
    fees: (deterredShare(met, own) * sums.fees) / count,
    chance: chance / count,
  };
}

function coursesOfLake(
  { futures }: LakeTerms,
  contained: readonly number[],
  { set, met, own, years }: { set: number; met: number; own: number; years: readonly YearShare[] },
): CourseSums {
  const horizon = years.length;
  const [established, clean] = [new Float64Array(horizon), new Float64Array(horizon)];
  const starts = new Float64Array(horizon + 1);
  let chance = 0;
  for (const future of futures) {
    const { unchecked, checked } = future.rates;
    starts.fill(0);
    starts[0] = 1;
    let [never, hazard] = [1, 0];
    for (let year = 0; year < horizon; year++) {
      const { reach } = years[year] ?? noElement(years, year);
      const isAsBefore =
        years[year - 1]?.reach === reach &&
        unchecked[year] === unchecked[year - 1] &&
        checked[year] === checked[year - 1];
      if (!isAsBefore) hazard = yearlyHazard(throughOf(future, set, { met, own, reach }), year, future.rates);
      const start = starts[year] ?? 0;
      const founded = start * hazard;
      never *= 1 - hazard;
      established[year] = (established[year] ?? 0) + founded;
      clean[year] = (clean[year] ?? 0) + start - founded;
      starts[year + 1] = (starts[year + 1] ?? 0) + start - founded;
      for (let age = 0; age < contained.length && year + age < horizon; age++)
        starts[year + age + 1] = (starts[year + age + 1] ?? 0) + founded * (contained[age] ?? 0);
    }
    chance += 1 - never;
  }
  return { established, clean, chance };
}

/**
 * What gets through, F (1 − d s k) (1 − c k m): linear in the share c that is met and in how far a year has come, k, and
 * what is deterred, d, is in proportion to what is met, s. Launches together are as `togetherOf` has them.
 */
function throughOf(
  { through, rates: { shape }, referenceLaunches }: LakeTerms["futures"][number],
  set: number,
  { met, own, reach }: { readonly met: number; readonly own: number; readonly reach: number },
): Through {
  const { closed, open, deterrence } = at(through, set);
  const kept = 1 - deterrence * deterredShare(met, own) * reach;
  const launches = kept * (closed.launches + met * reach * (open.launches - closed.launches));
  const foundings = kept * (closed.foundings + met * reach * (open.foundings - closed.foundings));
  if (shape === 1 || launches === 0) return { launches, foundings };
  return {
    launches,
    foundings: foundings * (launches / referenceLaunches) ** (shape - 1),
  };
}
