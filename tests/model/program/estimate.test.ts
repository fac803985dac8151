import { describe, expect, it } from "vitest";
import { meanEstimate, ratioEstimate, weightedEstimate } from "../../../src/model/program/estimate.js";

const list = (...values: number[]) => Float64Array.from(values);

describe("a mean of replications", () => {
  it("has the standard error s/√n", () => {
    // Mean 5; squares 9 + 1 + 1 + 1 + 0 + 0 + 4 + 16 = 32; √(32/(8·7)).
    const { mean, standardError } = meanEstimate(list(2, 4, 4, 4, 5, 5, 7, 9));
    expect(mean).toBe(5);
    expect(standardError).toBeCloseTo(Math.sqrt(32 / 56), 14);
  });
});

describe("a ratio of totals", () => {
  it("has the standard error of its deviations, over the mean of the denominators", () => {
    // 12/6 = 2; deviations 2 − 2·1 = 0, 3 − 2·2 = −1, 7 − 2·3 = 1; √(2/(3·2))/2.
    const { mean, standardError } = ratioEstimate(list(2, 3, 7), list(1, 2, 3));
    expect(mean).toBe(2);
    expect(standardError).toBeCloseTo(Math.sqrt(2 / 6) / 2, 14);
  });

  it("is that of the means where all denominators are 1", () => {
    const values = list(3, 8, 1, 4);
    expect(ratioEstimate(values, list(1, 1, 1, 1))).toEqual(meanEstimate(values));
  });

  it("is nothing, and sure, of nobody", () => {
    expect(ratioEstimate(list(0, 0), list(0, 0))).toEqual({ mean: 0, standardError: 0 });
  });
});

describe("a weighted mean of estimates", () => {
  it("adds the errors by weight in squares", () => {
    // (1·10 + 3·2)/4 = 4; √((1·8)² + (3·2)²)/4 = 10/4.
    const estimates = [
      { mean: 10, standardError: 8 },
      { mean: 2, standardError: 2 },
    ];
    expect(weightedEstimate(estimates, [1, 3])).toEqual({ mean: 4, standardError: 2.5 });
  });
});
