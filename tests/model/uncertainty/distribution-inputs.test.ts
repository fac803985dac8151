import { describe, expect, it, test } from "vitest";
import { type DistributionInput, distributionOf } from "../../../src/model/uncertainty/distribution-of.js";

describe("a number without spread", () => {
  it.each<DistributionInput>([
    { kind: "fixed", value: 5 },
    { kind: "uniform", low: 5, high: 5 },
    { kind: "triangular", low: 5, mode: 5, high: 5 },
    { kind: "pert", low: 5, mode: 5, high: 5 },
    { kind: "truncated-normal", mean: 5, standardDeviation: 0, low: 0, high: 9 },
    { kind: "truncated-normal", mean: 3, standardDeviation: 1, low: 5, high: 5 },
    { kind: "lognormal", p10: 5, p90: 5 },
  ])("is fixed, described as $kind", (input) => {
    const { kind, mean, variance, support, quantile } = distributionOf(input);
    expect({ kind, mean, variance, support }).toEqual({
      kind: "fixed",
      mean: 5,
      variance: 0,
      support: { low: 5, high: 5 },
    });
    expect([0, 0.5, 1].map(quantile)).toEqual([5, 5, 5]);
    expect(() => quantile(2)).toThrow("u is 2; allowed: 0 to 1");
  });
});

describe("numbers without meaning", () => {
  test.each<[DistributionInput, string]>([
    [{ kind: "fixed", value: Number.NaN }, "fixed distribution: value is NaN; allowed: a finite number"],
    [{ kind: "uniform", low: 3, high: 2 }, "low is 3, high is 2; allowed: low at most high"],
    [{ kind: "uniform", low: -1e308, high: 1e308 }, "high − low is Infinity; allowed: a finite number"],
    [{ kind: "triangular", low: 1, mode: 5, high: 4 }, "triangular distribution: mode is 5; allowed: 1 to 4"],
    [{ kind: "pert", low: 1, mode: 0, high: 4 }, "PERT distribution: mode is 0; allowed: 1 to 4"],
    [{ kind: "pert", low: 1, mode: Number.NaN, high: 4 }, "PERT distribution: mode is NaN"],
    [{ kind: "pert", low: Number.NEGATIVE_INFINITY, mode: 0, high: 4 }, "low is -Infinity"],
    [
      { kind: "truncated-normal", mean: 0, standardDeviation: -1, low: 0, high: 1 },
      "standardDeviation is -1; allowed: a finite number of 0 or more",
    ],
    [
      { kind: "truncated-normal", mean: 0, standardDeviation: Number.POSITIVE_INFINITY, low: 0, high: 1 },
      "standardDeviation is Infinity; allowed: a finite number of 0 or more",
    ],
    [
      { kind: "truncated-normal", mean: 0, standardDeviation: 1, low: 5, high: 9 },
      "allowed: 0.01 or more. Widen the bounds, or take a uniform distribution",
    ],
    [
      { kind: "truncated-normal", mean: 9, standardDeviation: 0, low: 0, high: 1 },
      "mean is 9; allowed: 0 to 1",
    ],
    [{ kind: "lognormal", p10: 0, p90: 1 }, "p10 is 0, p90 is 1; allowed: 0 < p10 ≤ p90"],
    [{ kind: "lognormal", p10: 2, p90: 1 }, "p10 is 2, p90 is 1; allowed: 0 < p10 ≤ p90"],
    [
      { kind: "lognormal", p10: 1e-200, p90: 1e200 },
      "variance for p10 of 1e-200 and p90 of 1e+200 is Infinity",
    ],
    [{ kind: "discrete", values: [] }, "weights of 0 values sum to 0; allowed: finite, above 0"],
    [{ kind: "discrete", values: [{ value: 1, weight: -1 }] }, "weight 0 is -1; allowed"],
    [{ kind: "discrete", values: [{ value: Number.NaN, weight: 1 }] }, "value 0 is NaN; allowed"],
  ])("%j are refused", (input, message) => {
    expect(() => distributionOf(input)).toThrow(RangeError);
    expect(() => distributionOf(input)).toThrow(message);
  });
});
