import fc from "fast-check";
import { fv } from "financial";
import { describe, expect, it } from "vitest";
import type { MoneySettings, ProgramOption } from "../../../src/model/inputs.js";
import type { FiscalRow } from "../../../src/model/money/fiscal-years.js";
import { programBudget, yearlyInBudget } from "../../../src/model/program/budget.js";
import { wholeStudy } from "../study.js";
import { anyOption } from "./any-option.js";

const money: MoneySettings = { ...wholeStudy.money, priceYear: 2026, startYear: 2027 };
const fromJuly = { ...money, fiscalYearStart: 7 };
const option: ProgramOption = {
  id: "program",
  name: "Program",
  rampUp: [],
  staff: [{ name: "Inspectors", hoursPerYear: 1000, wage: 20, loading: 0.2 }],
  equipment: [{ name: "Wash unit", count: 2, price: 5000, life: 3 }],
  yearly: [{ name: "Supplies", cost: 600 }],
  fees: [{ name: "Stickers", countPerYear: 100, fee: 10 }],
  afterInfestation: { share: 0 },
};

describe("the program by fiscal year", () => {
  it("has wages, equipment when it is bought, yearly lines and fees", () => {
    // By hand: 1000 h x 20 x 1.2 = 24,000; two units of 5,000 in 2027 and 2030; from July half of each of two years.
    const found = programBudget(option, fromJuly);
    expect(found?.rows.map(({ name, cents, before }) => [name, before, ...cents])).toEqual([
      ["Inspectors", 1_200_000, ...Array<number>(5).fill(2_400_000)],
      ["Wash unit", 500_000, 500_000, 0, 500_000, 500_000, 0],
      ["Supplies", 30_000, ...Array<number>(5).fill(60_000)],
      ["Stickers", -50_000, ...Array<number>(5).fill(-100_000)],
    ]);
    expect(found?.totals.cents).toEqual([2_860_000, 2_360_000, 2_860_000, 2_860_000, 2_360_000]);
    expect(found?.years.map(({ endYear }) => endYear)).toEqual([2028, 2029, 2030, 2031, 2032]);
  });

  it("has the share of the yearly lines that a growing program costs, and equipment in full", () => {
    const rampUp = [
      { reach: 1, cost: 0.4 },
      { reach: 1, cost: 0.7 },
    ];
    const rows = programBudget({ ...option, rampUp }, money)?.rows;
    expect(rows?.map(({ name, cents }) => [name, ...cents.slice(0, 3)])).toEqual([
      ["Inspectors", 960_000, 1_680_000, 2_400_000],
      ["Wash unit", 1_000_000, 0, 0],
      ["Supplies", 24_000, 42_000, 60_000],
      ["Stickers", -40_000, -70_000, -100_000],
    ]);
  });

  it("is in money of each year", () => {
    const [wages] = programBudget(option, { ...money, inflation: 0.025 })?.rows ?? [];
    // fv of financial 0.2.4: 24,000 of 2026 after 1 to 5 years at 2.5 %; it gives what is paid out a minus.
    const expected = [1, 2, 3, 4, 5].map((years) => Math.round(100 * fv(0.025, years, 0, -24_000)));
    expect(wages?.cents).toEqual(expected);
    expect(yearlyInBudget(24_000, { ...money, inflation: 0.025 })).toEqual(expected);
  });

  it("has wages that rise from the price year, and all else as it was", () => {
    // By hand, prices of 2026: 24,000 at 10 % a year is 26,400 in 2027 and 29,040 in 2028.
    const escalation = [{ group: "wages", rate: 0.1 }] as const;
    const rows = programBudget(option, { ...money, escalation })?.rows;
    expect(rows?.map(({ name, cents }) => [name, ...cents.slice(0, 2)])).toEqual([
      ["Inspectors", 2_640_000, 2_904_000],
      ["Wash unit", 1_000_000, 0],
      ["Supplies", 60_000, 60_000],
      ["Stickers", -100_000, -100_000],
    ]);
  });

  it("has a yearly amount whole in each of its years, also where they begin in July", () => {
    expect(yearlyInBudget(1234.5, fromJuly)).toEqual(Array<number>(5).fill(123_450));
  });

  it("shows the fiscal years that the horizon covers whole, and none where it covers none", () => {
    const yearsOver = (horizon: number, settings: MoneySettings) =>
      programBudget(option, { ...settings, horizon })?.years.length;
    expect(yearsOver(3, money)).toBe(3);
    expect(yearsOver(3, fromJuly)).toBe(2);
    expect(yearsOver(2, fromJuly)).toBe(1);
    expect(yearsOver(1, money)).toBe(1);
    expect(yearsOver(1, fromJuly)).toBeUndefined();
  });

  it("has what equipment costs to run every year, beside its purchases", () => {
    // By hand: two units at 400 a year, bought for 10,000 in 2027 and 2030.
    const equipment = [{ name: "Wash unit", count: 2, price: 5000, life: 3, yearlyCost: 400 }];
    const rows = programBudget({ ...option, staff: [], yearly: [], fees: [], equipment }, money)?.rows;
    expect(rows?.map(({ name, cents }) => [name, ...cents])).toEqual([
      ["Wash unit", 1_000_000, 0, 0, 1_000_000, 0],
      ["Wash unit, running cost", ...Array<number>(5).fill(80_000)],
    ]);
  });

  it("has groups that hold each row once, with subtotals that add up to the total", () => {
    fc.assert(
      fc.property(anyOption, fc.constantFrom(money, fromJuly), (any, settings) => {
        const budget = programBudget(any, { ...settings, inflation: 0.025 });
        fc.pre(budget !== undefined);
        expect(budget.groups.flatMap(({ rows }) => rows.map(({ part: _, ...row }) => row))).toEqual(
          budget.rows,
        );
        const sum = (pick: (row: FiscalRow) => number) =>
          budget.groups.reduce((total, { subtotal }) => total + pick(subtotal), 0);
        expect(sum(({ total }) => total)).toBe(budget.totals.total);
        expect(sum(({ before }) => before)).toBe(budget.totals.before);
        budget.totals.cents.forEach((cents, year) => {
          expect(sum((row) => row.cents[year] ?? Number.NaN)).toBe(cents);
        });
      }),
      { seed: 241, numRuns: 100 },
    );
  });

  it("is absent for an option without a program", () => {
    const nothing = { ...option, staff: [], equipment: [], yearly: [], fees: [] };
    expect(programBudget(nothing, money)).toBeUndefined();
  });
});
