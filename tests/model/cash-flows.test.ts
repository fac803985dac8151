import fc from "fast-check";
import { npv } from "financial";
import { describe, expect, it } from "vitest";
import { cashFlows } from "../../src/model/cash-flows.js";
import { compare } from "../../src/model/compare.js";
import { assumed } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { wholeStudy } from "./study.js";

const { baseline, options } = compare(wholeStudy, assumed);
const results = [baseline, ...options.map(({ result }) => result)];

describe("an option's flows in money of their years", () => {
  it("have at the nominal rate the present value of the constant ones at the real rate", () => {
    const inflation = fc.double({ min: 0, max: 0.3, noNaN: true });
    const timing = fc.constantFrom("mid-year" as const, "end-of-year" as const);
    fc.assert(
      fc.property(inflation, timing, fc.constantFrom(...results), (rate, when, result) => {
        const flows = cashFlows(result, { ...wholeStudy.money, inflation: rate, timing: when });
        expect(relativeGap(flows.nominalPresentValue, flows.realPresentValue)).toBeLessThan(1e-10);
      }),
      { seed: 83, numRuns: 100 },
    );
  });

  it("have the present value of an independent library", () => {
    // financial 0.2.4: npv of the nominal flows at each year's end from the start of 2027, (1.03)(1.02) - 1 = 5.06 %;
    // brought back over the year and a half from mid-2025 to the start of 2027.
    const money = { ...wholeStudy.money, inflation: 0.02, timing: "end-of-year" as const };
    for (const result of results) {
      const { nominal, nominalPresentValue, nominalRate } = cashFlows(result, money);
      expect(nominalRate).toBeCloseTo(0.0506, 14);
      const theirs = npv(0.0506, [0, ...nominal]) / 1.02 ** 1.5;
      expect(relativeGap(nominalPresentValue, theirs)).toBeLessThan(1e-10);
    }
  });

  it("are the expected costs by year, and add up to the option's present value", () => {
    for (const result of results) {
      const { constant, realPresentValue } = cashFlows(result, wholeStudy.money);
      result.expectedByYear.forEach(({ total }, year) => {
        expect(relativeGap(constant[year] ?? Number.NaN, total.toNumber())).toBeLessThan(1e-12);
      });
      expect(relativeGap(realPresentValue, result.presentValue.total.toNumber())).toBeLessThan(1e-12);
    }
  });
});
