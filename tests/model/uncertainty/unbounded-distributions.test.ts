import { describe, expect, it, test } from "vitest";
import { distributionOf } from "../../../src/model/uncertainty/distribution-of.js";
import { relativeGap } from "../near.js";

describe("the truncated normal distribution", () => {
  // scipy 1.17.1: d = truncnorm((a-mu)/s, (b-mu)/s, mu, s); d.mean(), d.var(), d.ppf([.01,.1,.5,.9,.99])
  test.each([
    [
      10,
      4,
      0,
      15,
      9.256330395683467,
      10.544450309646955,
      [1.3292326992629384, 4.758244892264954, 9.500183616750473, 13.446254757371861, 14.81111077918618],
    ],
    [
      0,
      1,
      1.5,
      6,
      1.9386771043057882,
      0.1495463324398345,
      [1.5051782379566307, 1.5537126994079007, 1.8329688592593159, 2.47398736994863, 3.2081009318991036],
    ],
    [
      100,
      30,
      100,
      110,
      104.95387730046879,
      8.301237735322553,
      [100.09817878370968, 100.98196139984599, 104.9310443084025, 108.96786241542048, 109.89627225986067],
    ],
    [
      5,
      2,
      -100,
      100,
      5,
      4,
      [0.3473042519183185, 2.4368968689107993, 5, 7.563103131089201, 9.652695748081682],
    ],
  ])(
    "of mean %d and deviation %d between %d and %d has scipy's moments and quantiles",
    (mean, deviation, low, high, expectedMean, expectedVariance, quantiles) => {
      const found = distributionOf({
        kind: "truncated-normal",
        mean,
        standardDeviation: deviation,
        low,
        high,
      });
      expect(relativeGap(found.mean, expectedMean)).toBeLessThan(1e-12);
      expect(relativeGap(found.variance, expectedVariance)).toBeLessThan(1e-9);
      [0.01, 0.1, 0.5, 0.9, 0.99].forEach((p, index) => {
        expect(relativeGap(found.quantile(p), quantiles[index] ?? Number.NaN)).toBeLessThan(1e-11);
      });
      expect([found.quantile(0), found.quantile(1)]).toEqual([low, high]);
    },
  );

  it("is the mirror image of the one with mirrored numbers", () => {
    const one = distributionOf({ kind: "truncated-normal", mean: 1, standardDeviation: 2, low: 3, high: 8 });
    const other = distributionOf({
      kind: "truncated-normal",
      mean: -1,
      standardDeviation: 2,
      low: -8,
      high: -3,
    });
    expect(one.mean).toBeCloseTo(-other.mean, 12);
    expect(one.variance).toBeCloseTo(other.variance, 12);
    for (const u of [0.001, 0.3, 0.999]) expect(one.quantile(u)).toBeCloseTo(-other.quantile(1 - u), 10);
  });
});

describe("the lognormal distribution", () => {
  // scipy 1.17.1: s = log(hi/lo)/2/norm.ppf(.9); d = lognorm(s, scale=sqrt(lo*hi)); d.mean(), d.var(), d.ppf([.1,.25,.5,.95])
  test.each([
    [
      100,
      1000,
      473.4217274535593,
      278206.06362554897,
      [100, 172.52277127980454, 316.22776601683796, 1385.935606155301],
    ],
    [
      0.02,
      0.05,
      0.033709448364844186,
      0.00015491193519652155,
      [0.02, 0.0248473835762708, 0.03162277660168379, 0.05693446392441424],
    ],
  ])("of P10 %d and P90 %d has scipy's moments and quantiles", (p10, p90, mean, variance, quantiles) => {
    const found = distributionOf({ kind: "lognormal", p10, p90 });
    expect(relativeGap(found.mean, mean)).toBeLessThan(1e-12);
    expect(relativeGap(found.variance, variance)).toBeLessThan(1e-12);
    [0.1, 0.25, 0.5, 0.95].forEach((p, index) => {
      expect(relativeGap(found.quantile(p), quantiles[index] ?? Number.NaN)).toBeLessThan(1e-13);
    });
    expect(found.quantile(0.9)).toBeCloseTo(p90, 10);
  });

  it("has no greatest value", () => {
    const { quantile } = distributionOf({ kind: "lognormal", p10: 1, p90: 2 });
    expect(quantile(0)).toBe(0);
    expect(() => quantile(1)).toThrow("u is 1; allowed: from 0 to below 1");
  });
});

describe("the discrete distribution", () => {
  const values = [
    { value: 7, weight: 1 },
    { value: -2, weight: 3 },
    { value: 100, weight: 0 },
    { value: 4, weight: 4 },
  ];
  const { mean, variance, support, quantile } = distributionOf({ kind: "discrete", values });

  it("has the weighted moments and the support of what is possible", () => {
    // By hand: (7 - 6 + 16)/8 = 2.125; (49 + 12 + 64)/8 - 2.125² = 11.109375.
    expect(mean).toBeCloseTo(2.125, 14);
    expect(variance).toBeCloseTo(11.109375, 13);
    expect(support).toEqual({ low: -2, high: 7 });
  });

  it("gives each value its share of u exactly", () => {
    const eighths = Array.from({ length: 8 }, (_, index) => quantile(index / 8));
    expect(eighths).toEqual([-2, -2, -2, 4, 4, 4, 4, 7]);
    expect(quantile(1)).toBe(7);
  });
});
