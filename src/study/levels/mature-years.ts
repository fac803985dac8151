import { sumOf as sumOfNumbers } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import type { Money } from "../../model/money/decimal.js";
import { sumOf } from "../../model/money/line.js";
import type { TriedPlan } from "../../model/structures/component.js";

/** Years of a mature infestation over which a yearly cost is told, so that a plan of several years is not misread. */
export interface MatureYears {
  /** The year since establishment that stands for a mature infestation, counted from 0. */
  readonly year: number;
  /** Years from it on whose mean is told. */
  readonly meanYears: number;
}

const leastYears = 5;
/** Within a hundredth of the largest. */
const matureShare = 1 - 1 / 100;
const leastMatureYear = 9;

export function matureYears({
  lake,
  input,
  structures,
}: Pick<Comparison, "lake" | "input" | "structures">): MatureYears {
  const peak = Math.max(...lake.densityByYear);
  const settled = lake.densityByYear.findIndex((density) => density >= peak * matureShare);
  const year = Math.min(input.money.horizon - 1, Math.max(settled, leastMatureYear));
  const cycles = structures.flatMap(({ components }) => components.flatMap(({ chosen }) => cycleOf(chosen)));
  return { year, meanYears: wholeCycles(cycles, input.money.horizon - year) };
}

/** Years after which the dates of a plan come round again, with what it costs a year. */
interface PlanCycle {
  readonly years: number;
  readonly cost: number;
}

function cycleOf({ plan: { routine }, yearlyCost }: TriedPlan): PlanCycle[] {
  if (routine.by !== "interval" || routine.months <= monthsInYear) return [];
  return [{ years: routine.months / monthsInYear, cost: yearlyCost }];
}

const monthsInYear = 12;

/**
 * The fewest years, at least five where the horizon has so many, that hold whole cycles of all plans; where none do, those that
 * hold whole cycles of the plans that cost most.
 */
export function wholeCycles(cycles: readonly PlanCycle[], most: number): number {
  const cutOff = (years: number) =>
    sumOfNumbers(cycles.map((cycle) => (years % cycle.years === 0 ? 0 : cycle.cost)));
  const first = Math.min(leastYears, most);
  let best = { years: first, cost: cutOff(first) };
  for (let years = first + 1; years <= most; years++) {
    const cost = cutOff(years);
    if (cost < best.cost) best = { years, cost };
  }
  return best.years;
}

/** Mean yearly cost of the mature years. */
export function matureMean(stream: readonly Money[], mature: MatureYears): number {
  const counted = stream.slice(mature.year, mature.year + mature.meanYears);
  return sumOf(counted).dividedBy(Math.max(1, counted.length)).toNumber();
}
