import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { discountFactors } from "../../../src/model/money/interest.js";
import { Money } from "../../../src/model/money/line.js";
import { expectedByYear, presentWeights, weightedSum } from "../../../src/model/risk/expectation.js";
import { establishmentByYear } from "../../../src/model/risk/hazard.js";
import { relativeGap } from "../near.js";

const steady = (amount: number, years: number) => Array<Money>(years).fill(new Money(amount));

/** Expected present value of a steady yearly loss from the year of establishment on, paid at the years' ends. */
function expectedLoss(hazard: number, loss: number, years: number, rate: number): Money {
  const factors = discountFactors(years, rate, "end-of-year");
  return weightedSum(expectedByYear(steady(loss, years), hazard, years), factors);
}

describe("the expected present value of a steady loss", () => {
  test.each([
    // Closed form, computed: sum over t = 1..20 of D (1 - (1-p)^t)/(1+r)^t with D 1,000,000 and r 3 %.
    [0.02, 2_522_386.47],
    [0.05, 5_359_483.8],
    [0.1, 8_420_418.26],
  ])("over 20 years at a hazard of %d is the closed form's", (hazard, expected) => {
    expect(Math.abs(expectedLoss(hazard, 1e6, 20, 0.03).toNumber() - expected)).toBeLessThan(0.01);
  });

  test.each([
    // Closed form without end, computed: D ((1+r)/r) p/(p+r).
    [0.02, 13_733_333.33],
    [0.05, 21_458_333.33],
    [0.1, 26_410_256.41],
  ])("without end at a hazard of %d is the closed form's", (hazard, expected) => {
    // 1.03^-1500 is 6e-20: the rest of the series is below a cent.
    expect(Math.abs(expectedLoss(hazard, 1e6, 1500, 0.03).toNumber() - expected)).toBeLessThan(0.01);
  });

  it("is nothing at a hazard of zero, and the whole series at a hazard of one", () => {
    expect(expectedLoss(0, 1e6, 30, 0.03).equals(0)).toBe(true);
    // P/A at 3 % over 20 years, 14.877475 (computed from the formula).
    expect(relativeGap(expectedLoss(1, 1, 20, 0.03).toNumber(), 14.877475)).toBeLessThan(1e-7);
  });
});

const losses = fc.array(fc.integer({ min: 0, max: 5_000_000 }), { minLength: 1, maxLength: 40 });
const chances = fc.double({ min: 0, max: 1, noNaN: true });

describe("the expected loss of each year", () => {
  it("is the plain sum over the possible years of establishment", () => {
    fc.assert(
      fc.property(losses, chances, (amounts, hazard) => {
        const horizon = amounts.length;
        const recursive = expectedByYear(
          amounts.map((amount) => new Money(amount)),
          hazard,
          horizon,
        );
        for (let year = 0; year < horizon; year++) {
          let sum = 0;
          for (let established = 0; established <= year; established++) {
            const chance = hazard * (1 - hazard) ** established;
            sum += chance * (amounts[year - established] ?? Number.NaN);
          }
          expect(Math.abs((recursive[year]?.toNumber() ?? Number.NaN) - sum)).toBeLessThan(1e-6);
        }
      }),
      { seed: 31, numRuns: 200 },
    );
  });

  it("weighs to the same present value by years of the study and by years since establishment", () => {
    fc.assert(
      fc.property(losses, chances, fc.double({ min: 0, max: 0.15, noNaN: true }), (amounts, hazard, rate) => {
        const horizon = amounts.length;
        const money = amounts.map((amount) => new Money(amount));
        const factors = discountFactors(horizon, rate, "mid-year");
        const byYear = weightedSum(expectedByYear(money, hazard, horizon), factors);
        const weights = presentWeights(establishmentByYear(hazard, horizon), factors);
        const bySince = weightedSum(money, weights);
        expect(byYear.minus(bySince).abs().toNumber()).toBeLessThan(1e-5);
      }),
      { seed: 32, numRuns: 200 },
    );
  });

  it("weighs later years since establishment less, as they are later and less likely to fall in the horizon", () => {
    const weights = presentWeights(establishmentByYear(0.06, 25), discountFactors(25, 0.03, "mid-year"));
    for (let since = 1; since < weights.length; since++) {
      expect(weights[since]).toBeLessThan(weights[since - 1] ?? Number.NaN);
    }
  });

  it("needs a cost for each year of the horizon", () => {
    expect(() => expectedByYear(steady(1, 3), 0.1, 4)).toThrow(RangeError);
  });
});

describe("the horizon", () => {
  // Leung and others 2002, as reported in Nature (420006a): up to 324,000 USD a year is worth spending for one lake
  // with a large power plant; over 5 years doing nothing was cheaper, over 25 years prevention clearly paid. Their
  // loss and chances were not published there: 2.5 million a year and 5 % against 1 % a year are chosen here.
  const netBenefit = (years: number) => {
    const avoided = expectedLoss(0.05, 2.5e6, years, 0.03).minus(expectedLoss(0.01, 2.5e6, years, 0.03));
    return avoided.minus(weightedSum(steady(324_000, years), discountFactors(years, 0.03, "end-of-year")));
  };

  it("can flip the answer: doing nothing is cheaper over 5 years, prevention over 25", () => {
    expect(netBenefit(5).lessThan(0)).toBe(true);
    expect(netBenefit(25).greaterThan(0)).toBe(true);
  });
});
