import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { discountFactors } from "../../../src/model/money/interest.js";
import { expectedByYear, presentWeights, weightedTotal } from "../../../src/model/risk/expectation.js";
import { detectedAtOnce, stateProbabilities } from "../../../src/model/risk/state-probabilities.js";
import { relativeGap } from "../near.js";
import { chance, courseCases } from "./hazard-cases.js";

const steady = (amount: number, years: number) => Array<number>(years).fill(amount);
const both = (amounts: readonly number[]) => ({ unnoticed: amounts, noticed: amounts });
const constantly = (hazard: number, years: number) =>
  stateProbabilities(Array<number>(years).fill(hazard), detectedAtOnce);

/** Expected present value of a steady yearly loss from the year of establishment on, paid at the years' ends. */
function expectedLoss(hazard: number, loss: number, years: number, rate: number): number {
  const factors = discountFactors(years, rate, "end-of-year");
  return expectedByYear(both(steady(loss, years)), constantly(hazard, years)).reduce(
    (sum, expected, year) => sum + expected * (factors[year] ?? Number.NaN),
    0,
  );
}

describe("the expected present value of a steady loss", () => {
  test.each([
    // Closed form, computed: sum over t = 1..20 of D (1 - (1-p)^t)/(1+r)^t with D 1,000,000 and r 3 %.
    [0.02, 2_522_386.47],
    [0.05, 5_359_483.8],
    [0.1, 8_420_418.26],
  ])("over 20 years at a hazard of %d is the closed form's", (hazard, expected) => {
    expect(Math.abs(expectedLoss(hazard, 1e6, 20, 0.03) - expected)).toBeLessThan(0.01);
  });

  test.each([
    // Closed form without end, computed: D ((1+r)/r) p/(p+r).
    [0.02, 13_733_333.33],
    [0.05, 21_458_333.33],
    [0.1, 26_410_256.41],
  ])("without end at a hazard of %d is the closed form's", (hazard, expected) => {
    // 1.03^-1000 is 1e-13: the rest of the series is below a cent.
    expect(Math.abs(expectedLoss(hazard, 1e6, 1000, 0.03) - expected)).toBeLessThan(0.01);
  });

  it("is nothing at a hazard of zero, and the whole series at a hazard of one", () => {
    expect(expectedLoss(0, 1e6, 30, 0.03)).toBe(0);
    // P/A at 3 % over 20 years, 14.877475 (computed from the formula).
    expect(relativeGap(expectedLoss(1, 1, 20, 0.03), 14.877475)).toBeLessThan(1e-7);
  });
});

describe("the expected loss of each year", () => {
  it("is the plain sum over the possible years of establishment", () => {
    const losses = fc.array(fc.integer({ min: 0, max: 5_000_000 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(losses, chance, (amounts, hazard) => {
        const expected = expectedByYear(both(amounts), constantly(hazard, amounts.length));
        expected.forEach((found, year) => {
          let sum = 0;
          for (let established = 0; established <= year; established++) {
            sum += hazard * (1 - hazard) ** established * (amounts[year - established] ?? Number.NaN);
          }
          expect(Math.abs(found - sum)).toBeLessThan(1e-6);
        });
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it("weighs to the same present value by years of the study and by years since establishment", () => {
    const rates = fc.double({ min: 0, max: 0.15, noNaN: true });
    fc.assert(
      fc.property(courseCases, rates, fc.integer({ min: 1, max: 5_000_000 }), (each, rate, amount) => {
        const horizon = each.hazards.length;
        const course = stateProbabilities(each.hazards, each.noticing);
        const factors = discountFactors(horizon, rate, "mid-year");
        const cost = {
          unnoticed: each.hazards.map((_, age) => amount / (age + 1)),
          noticed: each.hazards.map((_, age) => amount * (age + 1)),
        };
        const byYear = weightedTotal(expectedByYear(cost, course), factors);
        const weights = presentWeights(course, factors);
        const bySince =
          weightedTotal(cost.noticed, weights.noticed) + weightedTotal(cost.unnoticed, weights.unnoticed);
        expect(Math.abs(byYear - bySince)).toBeLessThan(1e-5);
      }),
      { seed: 32, numRuns: 200 },
    );
  });

  it("weighs later years since establishment less, as they are later and less likely to fall in the horizon", () => {
    const { noticed, unnoticed } = presentWeights(
      constantly(0.06, 25),
      discountFactors(25, 0.03, "mid-year"),
    );
    for (let since = 1; since < noticed.length; since++) {
      expect(noticed[since]).toBeLessThan(noticed[since - 1] ?? Number.NaN);
    }
    expect(unnoticed).toEqual(steady(0, 25));
  });

  it("needs a cost for each year of the horizon", () => {
    expect(() => expectedByYear(both(steady(1, 3)), constantly(0.1, 4))).toThrow(RangeError);
  });
});

describe("the horizon", () => {
  // Leung and others 2002, as reported in Nature (420006a): up to 324,000 USD a year is worth spending for one lake
  // with a large power plant; over 5 years doing nothing was cheaper, over 25 years prevention clearly paid. Their
  // loss and chances were not published there: 2.5 million a year and 5 % against 1 % a year are chosen here.
  const netBenefit = (years: number) => {
    const avoided = expectedLoss(0.05, 2.5e6, years, 0.03) - expectedLoss(0.01, 2.5e6, years, 0.03);
    const factors = discountFactors(years, 0.03, "end-of-year");
    return avoided - factors.reduce((sum, factor) => sum + 324_000 * factor, 0);
  };

  it("can flip the answer: doing nothing is cheaper over 5 years, prevention over 25", () => {
    expect(netBenefit(5)).toBeLessThan(0);
    expect(netBenefit(25)).toBeGreaterThan(0);
  });
});
