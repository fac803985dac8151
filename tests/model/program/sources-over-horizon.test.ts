import { describe, expect, it } from "vitest";
import type { MoneySettings, ProgramOption } from "../../../src/model/inputs.js";
import { sourcesOverHorizon } from "../../../src/model/program/sources-over-horizon.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";
import { wholeStudy } from "../study.js";

const horizon = 4;
const money: MoneySettings = {
  ...wholeStudy.money,
  horizon,
  startYear: 2027,
  priceYear: 2026,
  timing: "mid-year",
  inflation: 0.02,
  escalation: [],
  fiscalYearStart: 1,
};
const option: ProgramOption = {
  id: "program",
  name: "Program",
  rampUp: [],
  staff: [{ name: "Inspectors", hoursPerYear: 1000, wage: 20, loading: 0.2 }],
  equipment: [],
  yearly: [],
  fees: [{ name: "Stickers", countPerYear: 400, fee: 10 }],
  afterInfestation: { share: 0.25 },
};
const factors = [0.98, 0.95, 0.92, 0.9];
const clean = stateProbabilities([0, 0, 0, 0], { chanceByAge: [] });
const terms = { name: "Grant", paysFor: ["ongoing"] as const };

describe("what a source pays over the horizon, in present value", () => {
  it("is its yearly amount in the years of its terms, brought to prices of the price year, by hand", () => {
    // 5,000 in each of 2027 and 2028, which are 1.02 and 1.02² of the price year's money.
    const grant = { ...terms, amount: 500_000, from: 2027, to: 2028 };
    const [paid] = sourcesOverHorizon({ option, statesByYear: clean }, money, [grant], factors);
    expect(paid).toBeCloseTo(5000 * (0.98 / 1.02 + 0.95 / 1.02 ** 2), 6);
  });

  it("is its share of the cost in each year, whatever prices do, and half of it in fiscal years from July", () => {
    const partner = { ...terms, share: 0.1 };
    const [all] = sourcesOverHorizon({ option, statesByYear: clean }, money, [partner], factors);
    expect(all).toBeCloseTo(2400 * (0.98 + 0.95 + 0.92 + 0.9), 1);
    // The months before July 2027 and from July 2030 on are in none of the fiscal years 2028 to 2030.
    const fromJuly = { ...money, fiscalYearStart: 7 };
    const [inFull] = sourcesOverHorizon({ option, statesByYear: clean }, fromJuly, [partner], factors);
    const byHand = 2400 * (0.98 / 2 + 0.95 + 0.92 + 0.9 / 2);
    // A fiscal year's amount counts evenly over its months, of which the later half is dearer by 2 %.
    expect(Math.abs((inFull ?? Number.NaN) / byHand - 1)).toBeLessThan(0.001);
  });

  it("is less where mussels are known, of which the program then goes on with its share", () => {
    const infested = stateProbabilities([1, 0, 0, 0], { chanceByAge: [] });
    const partner = { ...terms, share: 0.1 };
    const [paid] = sourcesOverHorizon({ option, statesByYear: infested }, money, [partner], factors);
    expect(paid).toBeCloseTo(2400 * (0.98 + 0.25 * (0.95 + 0.92 + 0.9)), 1);
  });

  it("is never more than what fees leave", () => {
    const all = { ...terms, share: 1 };
    const [paid] = sourcesOverHorizon({ option, statesByYear: clean }, money, [all], factors);
    expect(paid).toBeCloseTo((24_000 - 4000) * (0.98 + 0.95 + 0.92 + 0.9), 1);
  });

  it("is nothing of a source whose terms end before the first year, and all of its years of one that begins then", () => {
    const years = (from: number | undefined, to: number | undefined) =>
      sourcesOverHorizon(
        { option, statesByYear: clean },
        { ...money, inflation: 0 },
        [{ ...terms, amount: 100_000, from, to }],
        factors,
      );
    expect(years(undefined, 2026)).toEqual([0]);
    expect(years(2027, 2027)).toEqual([expect.closeTo(1000 * 0.98, 9)]);
    expect(years(2030, undefined)).toEqual([expect.closeTo(1000 * 0.9, 9)]);
  });
});
