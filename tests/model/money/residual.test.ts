import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { presentWorthFactor } from "../../../src/model/money/interest.js";
import { purchaseYears, residualValue } from "../../../src/model/money/residual.js";

// 17,000 USD for a trailer wash unit: Montana, 2017 (ktvh.com). Lives are made up.
const unit = (life: number, firstYear = 1) => ({ price: 17_000, life, firstYear });

describe("the years of purchase", () => {
  test.each([
    // Counted on fingers.
    [10, 1, 30, [1, 11, 21]],
    [10, 1, 31, [1, 11, 21, 31]],
    [8, 1, 20, [1, 9, 17]],
    [8, 3, 20, [3, 11, 19]],
    [30, 1, 20, [1]],
    [7.5, 1, 20, [1, 8, 16]],
    [0.5, 1, 2, [1, 1, 2, 2]],
    [10, 21, 20, []],
  ])("of equipment that lasts %d years from year %d over %d years", (life, firstYear, horizon, years) => {
    expect(purchaseYears(unit(life, firstYear), horizon)).toEqual(years);
  });

  it("hold no purchase at the horizon's end by rounding", () => {
    // 49 lives of 1/49 years are one year, but 49 x (1/49) is not 1 in binary; likewise 0.1 x 3.
    expect(purchaseYears(unit(0.1), 3)).toHaveLength(30);
    expect(purchaseYears(unit(1 / 49), 1)).toHaveLength(49);
    expect(residualValue(unit(0.1), 3)).toBeLessThan(1e-3);
  });

  test.each([0, -1, Number.NaN])("are refused for a life of %d", (life) => {
    expect(() => purchaseYears(unit(life), 10)).toThrow("allowed: above 0");
    expect(() => residualValue(unit(life), 10)).toThrow("allowed: above 0");
  });
});

describe("the residual value", () => {
  test.each([
    // By hand, price x years left / life.
    [10, 1, 30, 0],
    [30, 1, 20, 17_000 / 3],
    [8, 1, 20, 8500],
    [7.5, 1, 20, (17_000 * 2.5) / 7.5],
    [10, 21, 20, 0],
    [10, 20, 20, 15_300],
  ])("of equipment that lasts %d years from year %d after %d years", (life, firstYear, horizon, value) => {
    expect(residualValue(unit(life, firstYear), horizon)).toBeCloseTo(value, 8);
  });

  it("leaves the purchases at so much a year of service, without interest", () => {
    // What is paid less what is left = price / life x years served: the definition of straight line.
    const lives = fc.double({ min: 0.5, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        lives,
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 0, max: 30 }),
        (life, more, before) => {
          const equipment = unit(life, before + 1);
          const horizon = before + more;
          const paid = purchaseYears(equipment, horizon).length * equipment.price;
          const used = paid - residualValue(equipment, horizon);
          expect(Math.abs(used - (equipment.price * more) / life)).toBeLessThan(0.001);
        },
      ),
      { seed: 31, numRuns: 300 },
    );
  });

  it("is nothing over whole lives, which then cost what capital recovery says", () => {
    // Bought at the start of years 1 and 11: 17,000 (1 + 1.03^-10) = A x P/A(3 %, 20), A = 17,000 A/P(3 %, 10).
    const bought = purchaseYears(unit(10), 20).reduce((sum, year) => sum + 17_000 * 1.03 ** -(year - 1), 0);
    const recovered = (17_000 / presentWorthFactor(0.03, 10)) * presentWorthFactor(0.03, 20);
    expect(bought).toBeCloseTo(recovered, 6);
  });
});
