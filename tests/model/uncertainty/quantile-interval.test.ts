import { describe, expect, it, test } from "vitest";
import { at } from "../../../src/model/lists.js";
import { randomStream } from "../../../src/model/random/generator.js";
import { distributionOf } from "../../../src/model/uncertainty/distribution-of.js";
import { quantileInterval } from "../../../src/model/uncertainty/quantile-interval.js";

const ranked = (count: number) => Array.from({ length: count }, (_, index) => count - index);

/** Chances of 0 to n events of chance p, each from the one before. */
function binomial(n: number, p: number): number[] {
  const chances = [(1 - p) ** n];
  for (let k = 1; k <= n; k++) chances.push((at(chances, k - 1) * (n - k + 1) * p) / (k * (1 - p)));
  return chances;
}

describe("the interval of a quantile", () => {
  it("of the median of 10 draws goes from the second to the ninth, with 97.9 %", () => {
    // By hand: 1 - 2 (1 + 10)/1024 = 0.978516; the third to the eighth would have 1 - 2 · 56/1024 = 0.890625.
    const { low, high, coverage } = quantileInterval(ranked(10), 0.5, 0.95);
    expect([low, high]).toEqual([2, 9]);
    expect(coverage).toBeCloseTo(1 - 22 / 1024, 12);
  });

  test.each([
    [40, 0.8, 0.9],
    [60, 0.5, 0.99],
    [100, 0.95, 0.95],
    [250, 0.1, 0.8],
  ])(
    "of %d draws at %d with %d is the narrowest with equal sides, by summing the binomial chances",
    (count, p, confidence) => {
      const { low, high, coverage } = quantileInterval(ranked(count), p, confidence);
      const chances = binomial(count, p);
      const sum = (from: number, to: number) =>
        chances.slice(from, to).reduce((total, each) => total + each, 0);
      const side = (1 - confidence) / 2;
      expect(coverage).toBeCloseTo(sum(low, high), 11);
      expect(coverage).toBeGreaterThanOrEqual(confidence);
      expect(sum(0, low)).toBeLessThanOrEqual(side);
      expect(sum(0, low + 1)).toBeGreaterThan(side);
      expect(sum(high, count + 1)).toBeLessThanOrEqual(side);
      expect(sum(high - 1, count + 1)).toBeGreaterThan(side);
    },
  );

  it("holds the true quantile in repeated runs as often as it says, within 4 standard errors", () => {
    const distribution = distributionOf({ kind: "lognormal", p10: 100, p90: 1000 });
    const truth = distribution.quantile(0.8);
    const runs = 3000;
    const { uniform } = randomStream(21, "quantile interval");
    let held = 0;
    let claimed = 0;
    for (let run = 0; run < runs; run++) {
      const drawn = Array.from({ length: 50 }, () => distribution.quantile(uniform()));
      const { low, high, coverage } = quantileInterval(drawn, 0.8, 0.9);
      claimed = coverage;
      if (low <= truth && truth <= high) held += 1;
    }
    expect(claimed).toBeLessThan(0.95);
    expect(Math.abs(held / runs - claimed)).toBeLessThan(4 * Math.sqrt((claimed * (1 - claimed)) / runs));
  });

  it("needs as many draws as leave either end at most half of the rest", () => {
    // 0.9^n ≤ 0.025 from n = 36 on: 0.9^35 = 0.02503, 0.9^36 = 0.02253 (computed).
    expect(() => quantileInterval(ranked(35), 0.9, 0.95)).toThrow(
      "35 draws for an interval of the quantile 0.9 with confidence 0.95; allowed: 36 or more",
    );
    expect(quantileInterval(ranked(36), 0.9, 0.95).high).toBe(36);
    expect(() => quantileInterval(ranked(35), 0.1, 0.95)).toThrow("36 or more");
    expect(quantileInterval(ranked(36), 0.1, 0.95).low).toBe(1);
  });

  it("is refused for shares and confidences of 0 or 1", () => {
    expect(() => quantileInterval(ranked(9), 0, 0.9)).toThrow("share is 0; allowed: above 0 and below 1");
    expect(() => quantileInterval(ranked(9), 0.5, 1)).toThrow(
      "confidence is 1; allowed: above 0 and below 1",
    );
    expect(() => quantileInterval([], 0.5, 0.9)).toThrow("sample: 0 values");
  });
});
