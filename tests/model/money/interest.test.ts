import fc from "fast-check";
import { npv, PaymentDueTime, pmt, pv } from "financial";
import { describe, expect, it, test } from "vitest";
import {
  capitalRecoveryFactor,
  discountFactor,
  discountFactors,
  equivalentYearly,
  presentWorthFactor,
} from "../../../src/model/money/interest.js";
import { halfDigit, relativeGap } from "../near.js";

const rates = fc.double({ min: 0.001, max: 0.2, noNaN: true });
const horizons = fc.integer({ min: 1, max: 100 });

describe("the factors of a uniform series", () => {
  test.each([
    // Blank and Tarquin, Engineering Economy, interest table for 0.25 %: n, A/P, P/A, P/F as printed.
    [10, 0.10138, 9.8639, 0.9753],
    [20, 0.05132, 19.4845, 0.9513],
  ])("are the printed ones at 0.25 %% over %d periods", (periods, recovery, worth, single) => {
    expect(Math.abs(capitalRecoveryFactor(0.0025, periods) - recovery)).toBeLessThanOrEqual(halfDigit(5));
    expect(Math.abs(presentWorthFactor(0.0025, periods) - worth)).toBeLessThanOrEqual(halfDigit(4));
    const factor = discountFactor(periods, 0.0025, "end-of-year");
    expect(Math.abs(factor - single)).toBeLessThanOrEqual(halfDigit(4));
  });

  test.each([
    // Computed from P/A = ((1+i)^n - 1)/(i (1+i)^n), A/P = 1/(P/A), P/F = (1+i)^-n.
    [0.02, 30, 22.396456, 0.0446499, 0.552071],
    [0.0275, 30, 20.249301, 0.0493844, 0.443144],
    [0.0275, 50, 26.99717, 0.0370409, 0.257578],
    [0.03, 20, 14.877475, 0.0672157, 0.553676],
    [0.07, 10, 7.023582, 0.1423775, 0.508349],
    [0.07, 20, 10.594014, 0.0943929, 0.258419],
  ])("are the computed ones at rate %d over %d years", (rate, years, worth, recovery, single) => {
    expect(Math.abs(presentWorthFactor(rate, years) - worth)).toBeLessThanOrEqual(halfDigit(6));
    expect(Math.abs(capitalRecoveryFactor(rate, years) - recovery)).toBeLessThanOrEqual(halfDigit(7));
    expect(Math.abs(discountFactor(years, rate, "end-of-year") - single)).toBeLessThanOrEqual(halfDigit(6));
  });

  it("count the years at a rate of zero", () => {
    expect(presentWorthFactor(0, 17)).toBe(17);
    expect(capitalRecoveryFactor(0, 8)).toBe(1 / 8);
    expect(discountFactors(3, 0, "mid-year")).toEqual([1, 1, 1]);
  });

  test.each([0.0025, 0.02, 0.03, 0.07])("tend to 1/i for a series without end at rate %d", (rate) => {
    // P/A tends to 1/i (textbook limit); a very long series must not overflow.
    expect(relativeGap(presentWorthFactor(rate, 1e6), 1 / rate)).toBeLessThan(1e-9);
    expect(relativeGap(capitalRecoveryFactor(rate, 1e6), rate)).toBeLessThan(1e-9);
  });

  it("agree with the independent library over a grid of rates and years", () => {
    // financial 0.2.4, a port of numpy-financial: pv and pmt carry the opposite sign by convention.
    const grid = [0, 0.0025, 0.01, 0.0275, 0.03, 0.05, 0.07, 0.1, 0.15];
    for (const rate of grid) {
      for (const years of [1, 2, 5, 8, 10, 15, 20, 30, 50, 100]) {
        const worth = presentWorthFactor(rate, years);
        expect(relativeGap(worth, -pv(rate, years, 1, 0, PaymentDueTime.End))).toBeLessThan(1e-9);
        const recovery = capitalRecoveryFactor(rate, years);
        expect(relativeGap(recovery, -pmt(rate, years, 1, 0, PaymentDueTime.End))).toBeLessThan(1e-9);
      }
    }
  });

  it("are the sum of the single payments, and their inverse", () => {
    fc.assert(
      fc.property(rates, horizons, (rate, years) => {
        const sum = discountFactors(years, rate, "end-of-year").reduce((total, each) => total + each, 0);
        expect(relativeGap(presentWorthFactor(rate, years), sum)).toBeLessThan(1e-10);
        const product = presentWorthFactor(rate, years) * capitalRecoveryFactor(rate, years);
        expect(product).toBeCloseTo(1, 12);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

const flows = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 40 });

describe("discounting", () => {
  it("gives the present value that the independent library gives", () => {
    // npv of financial 0.2.4 counts its first flow at time 0, hence the zero in front.
    fc.assert(
      fc.property(rates, flows, (rate, amounts) => {
        const factors = discountFactors(amounts.length, rate, "end-of-year");
        const own = amounts.reduce((sum, amount, year) => sum + amount * (factors[year] ?? Number.NaN), 0);
        expect(Math.abs(own - npv(rate, [0, ...amounts]))).toBeLessThan(1e-6);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  it("reproduces the library's documented net present value with the first flow at time 0", () => {
    // numpy-financial documentation (from memory), reproduced by financial 0.2.4: 8 %, -40000 now, then 5000,
    // 8000, 12000, 30000 at the years' ends: 3065.22267.
    const later = [5000, 8000, 12_000, 30_000];
    const factors = discountFactors(4, 0.08, "end-of-year");
    const value = later.reduce((sum, amount, year) => sum + amount * (factors[year] ?? Number.NaN), -40_000);
    expect(value).toBeCloseTo(3065.22267, 5);
  });

  it("in mid-year is worth half a year of interest more than at the year's end", () => {
    // (1+r)^-(t-1/2) over (1+r)^-t is (1+r)^(1/2), from the definition.
    fc.assert(
      fc.property(rates, horizons, (rate, year) => {
        const ratio = discountFactor(year, rate, "mid-year") / discountFactor(year, rate, "end-of-year");
        expect(relativeGap(ratio, Math.sqrt(1 + rate))).toBeLessThan(1e-12);
      }),
      { seed: 8, numRuns: 100 },
    );
  });

  it("puts the first year's payment half a year, or one year, from the present", () => {
    // By hand at 21 %: 1/sqrt(1.21) = 1/1.1 and 1/1.21.
    expect(discountFactor(1, 0.21, "mid-year")).toBeCloseTo(1 / 1.1, 14);
    expect(discountFactor(1, 0.21, "end-of-year")).toBeCloseTo(1 / 1.21, 14);
  });

  it("is inverted by the equivalent yearly amount under either timing", () => {
    fc.assert(
      fc.property(
        rates,
        horizons,
        fc.constantFrom("mid-year" as const, "end-of-year" as const),
        fc.double({ min: 1, max: 1e7, noNaN: true }),
        (rate, years, timing, yearly) => {
          const factors = discountFactors(years, rate, timing);
          const presentValue = factors.reduce((sum, factor) => sum + factor * yearly, 0);
          expect(relativeGap(equivalentYearly(presentValue, factors), yearly)).toBeLessThan(1e-12);
        },
      ),
      { seed: 10, numRuns: 200 },
    );
  });

  it("spreads a present value at the years' ends as capital recovery does", () => {
    const factors = discountFactors(20, 0.03, "end-of-year");
    // 0.0672157 a year for each unit at 3 % over 20 years: computed from the A/P formula.
    expect(Math.abs(equivalentYearly(1, factors) - 0.0672157)).toBeLessThanOrEqual(halfDigit(7));
  });
});
