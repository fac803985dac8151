import { at } from "../lake/calendar.js";
import type { OptionResult } from "../option.js";
import { costShare } from "../program/ramp-up.js";
import { type CourseYear, followCourse } from "../risk/course.js";
import { expectedByYear } from "../risk/expectation.js";

/**
 * Present value of all that an option costs as a function of its chance of establishment in each year, in plain
 * numbers: a search needs no cents.
 */
export function expectedCost(
  { option, schedule, unnoticed, noticing, programPerYear, schedulePerYear }: OptionResult,
  factors: readonly number[],
): (hazards: readonly number[]) => number {
  const losses = {
    unnoticed: unnoticed.harm.map((amount) => amount.toNumber()),
    noticed: schedule.infestation.byYear.map((amount) => amount.toNumber()),
  };
  const perYear = programPerYear.toNumber();
  const ofSchedule = schedulePerYear.toNumber();
  const { share } = option.afterInfestation;
  const yearCost = ({ noticed }: CourseYear, knownBefore: number, year: number) =>
    costShare(option, year) * perYear * (1 - knownBefore + share * knownBefore) +
    ofSchedule * noticed.reduce((sum, chance) => sum + chance, 0);
  return (hazards) => {
    const course = followCourse(hazards, noticing);
    const expected = expectedByYear(losses, course);
    return course.reduce(
      (cost, each, year) =>
        cost + at(factors, year) * (at(expected, year) + yearCost(each, course[year - 1]?.known ?? 0, year)),
      0,
    );
  };
}

/**
 * What one more clean year adds to the present cost of an option: C(τ+1) − C(τ), C(τ) its cost if mussels establish
 * in year τ = 1, 2, … for certain, and at last never within the horizon.
 */
export function costOfCleanYears(option: OptionResult, factors: readonly number[]): number[] {
  const cost = expectedCost(option, factors);
  const established = (year: number) => cost(factors.map((_, each) => Number(each === year)));
  const costs = [...factors.keys(), factors.length].map(established);
  return factors.map((_, year) => at(costs, year + 1) - at(costs, year));
}
