import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import { correlation } from "../../../src/model/uncertainty/correlation.js";
import { exceedanceCurve } from "../../../src/model/uncertainty/exceedance.js";
import { ranks } from "../../../src/model/uncertainty/ranks.js";
import {
  momentsOf,
  noValues,
  standardError,
  variance,
  withValue,
} from "../../../src/model/uncertainty/running-moments.js";
import { sampleQuantiles } from "../../../src/model/uncertainty/sample-quantile.js";
import { rankCorrelation } from "./rank-correlation.js";

describe("running moments", () => {
  it("of 2, 4, 4, 4, 5, 5, 7, 9 are the mean 5, variance 32/7 and standard error √(4/7)", () => {
    // By hand: squares 9+1+1+1+0+0+4+16 = 32; 32/7/8 = 4/7.
    const moments = momentsOf([2, 4, 4, 4, 5, 5, 7, 9]);
    expect(moments.count).toBe(8);
    expect(moments.mean).toBeCloseTo(5, 14);
    expect(variance(moments)).toBeCloseTo(32 / 7, 13);
    expect(standardError(moments)).toBeCloseTo(Math.sqrt(4 / 7), 14);
  });

  it("keep their digits far from 0", () => {
    // 1e9 + (4, 7, 13, 16): mean 1e9 + 10, variance (36 + 9 + 9 + 36)/3 = 30, by hand; squares of 1e9 have 18 digits.
    const moments = momentsOf([4, 7, 13, 16].map((value) => 1e9 + value));
    expect(moments.mean).toBe(1e9 + 10);
    expect(variance(moments)).toBeCloseTo(30, 9);
  });

  it("are refused where they mean nothing", () => {
    expect(() => withValue(noValues, Number.NaN)).toThrow("value 0 is NaN");
    expect(() => variance(momentsOf([3]))).toThrow("a variance of 1 values; allowed: 2 or more");
    expect(() => standardError(noValues)).toThrow("a variance of 0 values");
  });
});

describe("a sample quantile", () => {
  const sample = [3.1, 0.2, 7.7, 5.5, 5.5, 1.9, 12, -4];

  it("is NumPy's of type 7", () => {
    // numpy 2.4.6: [np.quantile(s, p) for p in (0, .1, .25, .5, .8, .95, 1)]
    const expected = [-4, -1.06, 1.475, 4.3, 6.82, 10.495, 12];
    sampleQuantiles(sample, [0, 0.1, 0.25, 0.5, 0.8, 0.95, 1]).forEach((value, index) => {
      expect(value).toBeCloseTo(at(expected, index), 12);
    });
    expect(sample[0]).toBe(3.1);
  });

  it("of one value is that value", () => {
    expect(sampleQuantiles([6], [0, 0.3, 1])).toEqual([6, 6, 6]);
  });

  it("is refused without values, of NaN and for shares outside 0 to 1", () => {
    expect(() => sampleQuantiles([], [0.5])).toThrow("sample: 0 values; allowed: 1 or more");
    expect(() => sampleQuantiles([1, Number.NaN], [0.5])).toThrow("value 1 is NaN");
    expect(() => sampleQuantiles([1], [1.2])).toThrow("share is 1.2; allowed: 0 to 1");
  });
});

describe("the exceedance curve", () => {
  it("goes from 1 at the least value to 0 at the greatest, by the quantiles of type 7", () => {
    // Type 7 of 0, 10, 20, 30, 40 is 40 p (by hand).
    expect(exceedanceCurve([20, 0, 40, 10, 30], 8)).toEqual(
      [0, 5, 10, 15, 20, 25, 30, 35, 40].map((value) => ({ value, chance: 1 - value / 40 })),
    );
  });

  it("has the quantiles that are told beside it at their chances, to the last digit", () => {
    const values = Array.from({ length: 1000 }, (_, draw) => draw ** 2);
    const curve = exceedanceCurve(values, 100);
    for (const [share, chance] of [
      [0.95, 0.05],
      [0.9, 0.1],
      [0.7, 0.3],
      [0.3, 0.7],
    ] as const) {
      expect(curve.find((point) => point.chance <= chance)?.value).toBe(sampleQuantiles(values, [share])[0]);
    }
  });

  it("agrees with the share of draws above its values, to one draw", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 2, maxLength: 60 }),
        (values) => {
          const distinct = [...new Set(values)];
          for (const { value, chance } of exceedanceCurve(distinct, 7)) {
            const above = distinct.filter((each) => each > value).length / distinct.length;
            expect(Math.abs(above - chance)).toBeLessThan(1.001 / distinct.length);
          }
        },
      ),
      { seed: 331 },
    );
  });

  it("is refused without a step", () => {
    expect(() => exceedanceCurve([1], 0)).toThrow("steps of the curve is 0");
  });
});

describe("rank correlation", () => {
  it("gives equal values the mean of their ranks", () => {
    expect(ranks([5, 1, 5, 3, 5])).toEqual([4, 1, 4, 2, 4]);
    expect(ranks([])).toEqual([]);
  });

  it("with ties is scipy's", () => {
    // scipy 1.17.1: spearmanr([1,2,2,3,5,5,5,8], [2,1,4,4,3,9,7,7])[0]
    expect(rankCorrelation([1, 2, 2, 3, 5, 5, 5, 8], [2, 1, 4, 4, 3, 9, 7, 7])).toBeCloseTo(
      0.7144097497387378,
      14,
    );
  });

  it("without ties is 1 - 6 Σd²/(n(n² - 1))", () => {
    // The textbook formula; here d² = 1+1+4+4+0 = 10, so 1 - 60/120.
    expect(rankCorrelation([10, 20, 30, 40, 50], [2, 1, 5, 3, 4])).toBeCloseTo(
      1 - (6 * (1 + 1 + 4 + 1 + 1)) / (5 * 24),
      14,
    );
  });

  it("does not change when a list is bent without changing its order, as Pearson's does", () => {
    const [x, y] = [
      [1, 4, 2, 8, 5],
      [3, 9, 4, 7, 11],
    ];
    expect(rankCorrelation(x.map(Math.exp), y)).toBe(rankCorrelation(x, y));
    expect(correlation(x.map(Math.exp), y)).not.toBeCloseTo(correlation(x, y), 1);
  });

  it("of Pearson is that of a worked example", () => {
    // By hand: deviations (-1, 0, 1) and (-1, 1, 0): 1/√(2·2).
    expect(correlation([1, 2, 3], [4, 6, 5])).toBeCloseTo(0.5, 14);
  });

  it("is refused for lists that do not vary, or do not match", () => {
    expect(() => correlation([1, 2], [3, 3])).toThrow("the second list holds");
    expect(() => correlation([0.1, 0.1, 0.1], [1, 2, 3])).toThrow("the first list holds 0.1 throughout");
    expect(() => correlation([1e-200, 2e-200], [1, 2])).toThrow("the first list has a spread of 0; allowed");
    expect(() => correlation([1, 2], [1e200, 2e200])).toThrow("the second list has a spread of Infinity");
    expect(() => correlation([1, 2], [1, 2, 3])).toThrow("has 2 values and the second 3");
    expect(() => correlation([1, Number.NaN], [1, 2])).toThrow("value 1 is NaN");
    expect(() => correlation([1], [2])).toThrow("1 values; allowed: 2 or more");
  });
});
