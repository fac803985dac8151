import { describe, expect, it } from "vitest";
import type { Plan, Routine } from "../../../../src/model/structures/component.js";
import { areAmong, dateFrom, datesOf, yearsToRepeat } from "../../../../src/model/structures/plans/dates.js";
import { assumptionSet, idsOfPlanBy } from "../../assumptions.js";

const nothing: Routine = { by: "nothing" };
const every = (months: number): Routine => ({ by: "interval", months });
const inMonth = (month: number): Routine => ({ by: "month-of-year", month });
const trigger: Routine = { by: "trigger", limitShare: idsOfPlanBy("trigger").limitShare };

describe("the dates of a routine, by hand", () => {
  it("begin after the first interval, or in the first year's month", () => {
    expect(datesOf(every(6))).toEqual({ first: 5, every: 6 });
    expect(datesOf(inMonth(9))).toEqual({ first: 9, every: 12 });
    expect([nothing, trigger].map(datesOf)).toEqual([undefined, undefined]);
  });

  it("from a month on begin with that month's own", () => {
    const from = (month: number) => dateFrom({ first: 5, every: 6 }, month);
    expect([0, 4, 5, 6, 11, 12].map(from)).toEqual([5, 5, 5, 11, 11, 17]);
  });

  it("fall into the same months after as many years as the interval asks for", () => {
    const years = [1, 6, 12, 5, 8, 18, 24].map((months) => yearsToRepeat({ first: 0, every: months }));
    expect(years).toEqual([1, 1, 1, 5, 2, 3, 2]);
  });
});

describe("dates that are among those of another plan", () => {
  const [entry, otherEntry] = assumptionSet.plans;
  const planOf = (routine: Routine, of = entry) => ({ routine, entry: of }) as Plan;

  it.each<[string, Routine, Routine, boolean]>([
    ["each year, of each half-year", every(12), every(6), true],
    ["each half-year, of each year", every(6), every(12), false],
    ["each year, of every eight months", every(12), every(8), false],
    ["none, of any", nothing, every(6), true],
    ["any, of none", every(6), nothing, false],
    ["in a month of the year, of each month", inMonth(11), every(1), false],
  ])("%s", (_what, some, others, expected) => {
    expect(areAmong(planOf(some), planOf(others))).toBe(expected);
    expect(areAmong(planOf(some), planOf(others, otherEntry))).toBe(false);
  });
});
