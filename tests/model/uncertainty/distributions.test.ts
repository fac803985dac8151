import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { randomStream } from "../../../src/model/random/generator.js";
import { type DistributionInput, distributionOf } from "../../../src/model/uncertainty/distribution-of.js";
import { momentsOf } from "../../../src/model/uncertainty/running-moments.js";
import { halfDigit } from "../near.js";

const inputs: readonly DistributionInput[] = [
  { kind: "uniform", low: -3, high: 5 },
  { kind: "triangular", low: 10, mode: 20, high: 60 },
  { kind: "triangular", low: 0, mode: 0, high: 2 },
  { kind: "pert", low: 10, mode: 20, high: 60 },
  { kind: "pert", low: 0, mode: 1, high: 1 },
  { kind: "truncated-normal", mean: 10, standardDeviation: 4, low: 0, high: 15 },
  { kind: "truncated-normal", mean: 0, standardDeviation: 1, low: 1.5, high: 6 },
  { kind: "lognormal", p10: 100, p90: 1000 },
  {
    kind: "discrete",
    values: [
      { value: 7, weight: 1 },
      { value: -2, weight: 3 },
      { value: 100, weight: 0 },
      { value: 4, weight: 4 },
    ],
  },
];

describe.each(inputs)("$kind ($low $mode $high)", (input) => {
  const distribution = distributionOf(input);
  const { low, high } = distribution.support;

  it("has quantiles that never fall, within its support", () => {
    const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
    fc.assert(
      fc.property(share, share, (one, other) => {
        const lower = distribution.quantile(Math.min(one, other));
        const upper = distribution.quantile(Math.max(one, other));
        // Brent's method ends within a few units of the last digit.
        expect(lower).toBeLessThanOrEqual(upper + 1e-13 * Math.abs(upper));
        expect(lower).toBeGreaterThanOrEqual(low);
        expect(upper).toBeLessThanOrEqual(high);
      }),
      { seed: 301 },
    );
  });

  it("has the mean and variance of its draws within 4 standard errors", () => {
    const count = 20_000;
    const { uniform } = randomStream(11, `distribution/${input.kind}`);
    const drawn = Array.from({ length: count }, () => distribution.quantile(uniform()));
    const squares = drawn.map((value) => (value - distribution.mean) ** 2);
    const [values, spread] = [momentsOf(drawn), momentsOf(squares)];
    expect(Math.abs(values.mean - distribution.mean)).toBeLessThan(
      4 * Math.sqrt(distribution.variance / count),
    );
    expect(Math.abs(spread.mean - distribution.variance)).toBeLessThan(
      (4 * Math.sqrt(spread.squares / count)) / Math.sqrt(count),
    );
  });

  it.each([-0.01, 1.01, Number.NaN])("has no quantile of %d", (u) => {
    expect(() => distribution.quantile(u)).toThrow(`u is ${u}; allowed`);
  });
});

describe("beta-PERT", () => {
  it("of 10, 20 and 60 has the mean 25 and the variance 75, not the 69.4 of (b-a)²/36", () => {
    // By hand: (10 + 80 + 60)/6 = 25; (25 - 10)(60 - 25)/7 = 75.
    const { mean, variance } = distributionOf({ kind: "pert", low: 10, mode: 20, high: 60 });
    expect(mean).toBeCloseTo(25, 12);
    expect(variance).toBeCloseTo(75, 11);
  });

  // scipy 1.17.1: beta(1+4*(m-a)/(b-a), 1+4*(b-m)/(b-a), a, b-a).ppf([.001,.1,.5,.9,.999])
  test.each([
    [
      10,
      20,
      60,
      [10.31569870839235, 14.495106522962082, 23.833612969625946, 37.26670252167909, 52.87757843693393],
    ],
    [
      0,
      1,
      1,
      [0.251188643150958, 0.6309573444801932, 0.8705505632961241, 0.9791483623609768, 0.9997999199519664],
    ],
    [
      0,
      0.01,
      1,
      [
        0.00026651090435934964, 0.02334837374623021, 0.13670597845440396, 0.37896787021102607,
        0.7556066159986207,
      ],
    ],
    [
      -5,
      -5,
      3,
      [-4.998399359615731, -4.833186898887814, -3.964404506368993, -2.047658755841546, 0.9904908547923359],
    ],
  ])("of %d, %d and %d has scipy's quantiles", (low, mode, high, expected) => {
    const { quantile } = distributionOf({ kind: "pert", low, mode, high });
    [0.001, 0.1, 0.5, 0.9, 0.999].forEach((p, index) => {
      expect(Math.abs(quantile(p) - (expected[index] ?? Number.NaN))).toBeLessThan(1e-10 * (high - low));
    });
  });
});

describe("the triangular distribution", () => {
  const { mean, variance, quantile } = distributionOf({ kind: "triangular", low: 10, mode: 20, high: 60 });

  it("of 10, 20 and 60 has the mean 30 and the variance 116.6667", () => {
    // By hand: 90/3; (100 + 400 + 3600 - 200 - 600 - 1200)/18 = 2100/18.
    expect(mean).toBeCloseTo(30, 12);
    expect(variance).toBeCloseTo(2100 / 18, 11);
  });

  // By hand: P10 = 10 + √(0.1·50·10), P50 = 60 - √(0.5·50·40), P80 = 60 - √(0.2·50·40) = 40.
  test.each([
    [0.1, 17.0711, 4],
    [0.5, 28.3772, 4],
    [0.8, 40, 12],
    [0.2, 20, 12],
  ])("of 10, 20 and 60 has the quantile of %d at %d", (p, expected, decimals) => {
    expect(Math.abs(quantile(p) - expected)).toBeLessThan(halfDigit(decimals));
  });

  it("agrees with the quantile formula of Mode = low and Mode = high", () => {
    // Where the mode is at an end: b - (b-a)√(1-p), and a + (b-a)√p (by hand).
    expect(distributionOf({ kind: "triangular", low: 2, mode: 2, high: 6 }).quantile(0.36)).toBeCloseTo(
      2.8,
      12,
    );
    expect(distributionOf({ kind: "triangular", low: 2, mode: 6, high: 6 }).quantile(0.36)).toBeCloseTo(
      4.4,
      12,
    );
  });
});
