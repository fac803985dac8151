import { fv } from "financial";
import { describe, expect, it } from "vitest";
import type { MoneySettings, ProgramOption } from "../../../src/model/inputs.js";
import { programBudget } from "../../../src/model/program/budget.js";
import { wholeStudy } from "../study.js";

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

  it("is in money of each year", () => {
    const [wages] = programBudget(option, { ...money, inflation: 0.025 })?.rows ?? [];
    // fv of financial 0.2.4: 24,000 of 2026 after 1 to 5 years at 2.5 %; it gives what is paid out a minus.
    const expected = [1, 2, 3, 4, 5].map((years) => Math.round(100 * fv(0.025, years, 0, -24_000)));
    expect(wages?.cents).toEqual(expected);
  });

  it("shows the fiscal years that the horizon covers whole, and none where it covers none", () => {
    const yearsOver = (horizon: number, settings: MoneySettings) =>
      programBudget(option, { ...settings, horizon })?.years.length;
    expect(yearsOver(3, money)).toBe(3);
    expect(yearsOver(3, fromJuly)).toBe(2);
    expect(yearsOver(1, money)).toBe(1);
    expect(yearsOver(1, fromJuly)).toBeUndefined();
  });

  it("is absent for an option without a program", () => {
    const nothing = { ...option, staff: [], equipment: [], yearly: [], fees: [] };
    expect(programBudget(nothing, money)).toBeUndefined();
  });
});
