import fc from "fast-check";
import { fv, npv, PaymentDueTime } from "financial";
import { describe, expect, it, test } from "vitest";
import {
  growthFactors,
  nominalFlows,
  nominalRate,
  type PriceTimes,
  presentValueOfNominal,
  yearsFromPrices,
} from "../../../src/model/money/escalation.js";
import { discountFactors } from "../../../src/model/money/interest.js";
import { relativeGap } from "../near.js";

const times: PriceTimes = { priceYear: 2025, startYear: 2027, timing: "mid-year" };
const timings = fc.constantFrom("mid-year" as const, "end-of-year" as const);
const anyTimes = fc.record({
  priceYear: fc.integer({ min: 2015, max: 2035 }),
  startYear: fc.integer({ min: 2020, max: 2030 }),
  timing: timings,
});
const rate = fc.double({ min: -0.02, max: 0.12, noNaN: true });
const flows = fc.array(fc.double({ min: 1, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

const presentValue = (amounts: readonly number[], real: number, timing: PriceTimes["timing"]) =>
  discountFactors(amounts.length, real, timing).reduce(
    (sum, factor, index) => sum + factor * (amounts[index] ?? Number.NaN),
    0,
  );

describe("the years from the prices to a flow", () => {
  test.each([
    // By hand: prices of 2025 are of mid-2025; the first flow falls in mid-2027 or at the end of 2027.
    ["mid-year" as const, 1, 2],
    ["mid-year" as const, 10, 11],
    ["end-of-year" as const, 1, 2.5],
  ])("are counted from mid-year to %s of year %d", (timing, year, years) => {
    expect(yearsFromPrices(year, { ...times, timing })).toBe(years);
  });

  it("are negative for a flow before the price year", () => {
    expect(yearsFromPrices(1, { ...times, priceYear: 2030 })).toBe(-3);
  });
});

describe("growth at a yearly rate", () => {
  it("is by hand 1.21 after two years at 10 %, and 1/1.1 a year before", () => {
    const [first, second] = growthFactors(2, 0.1, times);
    expect(first).toBeCloseTo(1.21, 14);
    expect(second).toBeCloseTo(1.331, 14);
    expect(growthFactors(1, 0.1, { ...times, priceYear: 2028 })[0]).toBeCloseTo(1 / 1.1, 14);
  });

  it("is the independent library's future value of 1", () => {
    // financial 0.2.4: fv of a present value of -1 without payments.
    growthFactors(30, 0.025, times).forEach((factor, index) => {
      expect(relativeGap(factor, fv(0.025, index + 2, 0, -1, PaymentDueTime.End))).toBeLessThan(1e-12);
    });
  });

  test.each([-1, -1.5, Number.NaN])("is refused at %d", (wrong) => {
    expect(() => growthFactors(3, wrong, times)).toThrow("allowed: above -1");
  });
});

describe("nominal and real rates", () => {
  it("follow Fisher's relation by hand: 3 % real under 2 % inflation is 5.06 %", () => {
    expect(nominalRate(0.03, 0.02)).toBeCloseTo(0.0506, 14);
  });

  it("agree to the rounding of the tables with the federal ones of January 2000", () => {
    // OMB Circular A-94, Appendix C, January 2000: nominal 5.9 and 6.3 %, real 3.8 and 4.2 % for 3 and 30 years,
    // which is one general inflation for all maturities, 2.0 %, to within the printed tenth.
    expect(Math.abs(nominalRate(0.038, 0.02) - 0.059)).toBeLessThan(0.001);
    expect(Math.abs(nominalRate(0.042, 0.02) - 0.063)).toBeLessThan(0.001);
  });
});

describe("constant-price and nominal flows", () => {
  it("have the same present value", () => {
    fc.assert(
      fc.property(flows, rate, rate, anyTimes, (constant, real, inflation, when) => {
        const nominal = nominalFlows(constant, inflation, when);
        const own = presentValueOfNominal(nominal, { real, inflation }, when);
        expect(relativeGap(own, presentValue(constant, real, when.timing))).toBeLessThan(1e-11);
      }),
      { seed: 21, numRuns: 300 },
    );
  });

  it("have it by the independent library too, where prices are of the present", () => {
    // financial 0.2.4: npv of the nominal flows at the nominal rate, the first flow a year from now, against npv of
    // the constant ones at the real rate. Prices of mid-2026 are half a year old at the start of 2027.
    fc.assert(
      fc.property(flows, rate, rate, (constant, real, inflation) => {
        const when: PriceTimes = { priceYear: 2026, startYear: 2027, timing: "end-of-year" };
        const nominal = nominalFlows(constant, inflation, when);
        const halfYear = Math.sqrt(1 + inflation);
        const theirs = npv((1 + real) * (1 + inflation) - 1, [0, ...nominal]) / halfYear;
        expect(relativeGap(theirs, npv(real, [0, ...constant]))).toBeLessThan(1e-9);
        expect(relativeGap(presentValueOfNominal(nominal, { real, inflation }, when), theirs)).toBeLessThan(
          1e-9,
        );
      }),
      { seed: 22, numRuns: 100 },
    );
  });

  it("differ where inflation is not zero", () => {
    expect(nominalFlows([100, 100], 0, times)).toEqual([100, 100]);
    const [first = 0, second = 0] = nominalFlows([100, 100], 0.02, times);
    // By hand: 100 x 1.02^2 = 104.04, x 1.02 = 106.1208.
    expect(first).toBeCloseTo(104.04, 10);
    expect(second).toBeCloseTo(106.1208, 10);
  });
});
