import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it, test } from "vitest";
import {
  beliefFromCounts,
  beliefFromMean,
  LearningError,
  learned,
  summaryOf,
} from "../../../src/model/program/learning.js";
import { relativeGap } from "../near.js";

const counts = fc
  .tuple(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 0, max: 5000 }))
  .map(([found, others]) => ({ found, screened: found + others }));
const belief = fc.record({
  alpha: fc.double({ min: 0.5, max: 500, noNaN: true }),
  beta: fc.double({ min: 0.5, max: 500, noNaN: true }),
});

describe("a belief about a share", () => {
  it("has the mean and the weight that it was given", () => {
    const { alpha, beta } = beliefFromMean(0.03, 200);
    expect(alpha).toBeCloseTo(6, 12);
    expect(beta).toBeCloseTo(194, 12);
    expect(summaryOf({ alpha, beta }).mean).toBeCloseTo(0.03, 14);
  });

  it("from another program counts its boats as often as they are worth, beside Jeffreys' two halves", () => {
    expect(beliefFromCounts({ screened: 10, found: 4 }, 1)).toEqual({ alpha: 4.5, beta: 6.5 });
    expect(beliefFromCounts({ screened: 10, found: 4 }, 0.5)).toEqual({ alpha: 2.5, beta: 3.5 });
    expect(beliefFromCounts({ screened: 10, found: 4 }, 0)).toEqual({ alpha: 0.5, beta: 0.5 });
  });
});

describe("a belief's interval", () => {
  it("is that of a general statistics library", () => {
    // jstat 1.9.6, beta.inv.
    fc.assert(
      fc.property(belief, counts, (prior, season) => {
        const after = learned(prior, season);
        const { p5, p95 } = summaryOf(after);
        expect(Math.abs(p5 - jStat.beta.inv(0.05, after.alpha, after.beta))).toBeLessThan(1e-6);
        expect(Math.abs(p95 - jStat.beta.inv(0.95, after.alpha, after.beta))).toBeLessThan(1e-6);
      }),
      { seed: 94, numRuns: 100 },
    );
  });
});

describe("a season", () => {
  it("adds its boats to the belief, by hand", () => {
    expect(learned({ alpha: 2, beta: 3 }, { screened: 10, found: 4 })).toEqual({ alpha: 6, beta: 9 });
  });

  it("moves the mean to between what was believed and what was found", () => {
    fc.assert(
      fc.property(belief, counts, (prior, season) => {
        fc.pre(season.screened > 0);
        const before = summaryOf(prior).mean;
        const found = season.found / season.screened;
        const after = summaryOf(learned(prior, season)).mean;
        expect(after).toBeGreaterThanOrEqual(Math.min(before, found) - 1e-12);
        expect(after).toBeLessThanOrEqual(Math.max(before, found) + 1e-12);
      }),
      { seed: 91, numRuns: 200 },
    );
  });

  it("teaches the same in parts and in any order", () => {
    fc.assert(
      fc.property(belief, counts, counts, (prior, one, other) => {
        const together = { screened: one.screened + other.screened, found: one.found + other.found };
        const all = learned(prior, together);
        for (const after of [learned(learned(prior, one), other), learned(learned(prior, other), one)]) {
          expect(relativeGap(after.alpha, all.alpha)).toBeLessThan(1e-12);
          expect(relativeGap(after.beta, all.beta)).toBeLessThan(1e-12);
        }
      }),
      { seed: 92, numRuns: 100 },
    );
  });

  it("without boats teaches nothing", () => {
    expect(learned({ alpha: 2, beta: 3 }, { screened: 0, found: 0 })).toEqual({ alpha: 2, beta: 3 });
  });
});

describe("the interval of a belief", () => {
  it("is by hand from x² and 1 − (1−x)² for two boats of one kind", () => {
    // Beta(2, 1): chance x^2, so P5 = sqrt(0.05); Beta(1, 2) is its mirror image.
    const two = summaryOf({ alpha: 2, beta: 1 });
    expect(two.p5).toBeCloseTo(Math.sqrt(0.05), 12);
    expect(two.p95).toBeCloseTo(Math.sqrt(0.95), 12);
    const mirrored = summaryOf({ alpha: 1, beta: 2 });
    expect(mirrored.p5).toBeCloseTo(1 - two.p95, 12);
    expect(mirrored.p95).toBeCloseTo(1 - two.p5, 12);
  });

  it("after none of 299 boats ends at 1 %, the rule that 299 clean samples show less than 1 %", () => {
    // With a flat prior, Beta(1, 300): 1 - 0.05^(1/300) = 0.994 %; from the closed form.
    const { p95 } = summaryOf(learned({ alpha: 1, beta: 1 }, { screened: 299, found: 0 }));
    expect(p95).toBeCloseTo(1 - 0.05 ** (1 / 300), 12);
    expect(p95).toBeLessThan(0.01);
  });

  it("narrows as boats come in at the same share", () => {
    const widths = [0, 1, 10, 100].map((times) => {
      const { p5, p95 } = summaryOf(
        learned({ alpha: 1, beta: 4 }, { screened: 50 * times, found: 10 * times }),
      );
      return p95 - p5;
    });
    for (let index = 1; index < widths.length; index++) {
      expect(widths[index] ?? Number.NaN).toBeLessThan(widths[index - 1] ?? Number.NaN);
    }
  });
});

describe("what western programs found", () => {
  it("in Idaho makes 0.039 % of boats fouled, and of those from mussel waters about 3 %", () => {
    // State figures of 2015 in the press (bonnercountydailybee.com, 20 November 2015): 64,157 inspections, 25 fouled,
    // up to 830 boats from mussel waters.
    const all = summaryOf(beliefFromCounts({ screened: 64_157, found: 25 }, 1));
    expect(Math.abs(all.mean - 0.00039)).toBeLessThan(0.00001);
    const risky = summaryOf(beliefFromCounts({ screened: 830, found: 25 }, 1));
    expect(Math.abs(risky.mean - 0.03)).toBeLessThan(0.001);
    // Poisson: sqrt(25) = 5 boats, 1.645 of them on either side, within a boat for the skewness.
    expect(Math.abs(all.p5 * 64_157 - (25 - 8.2))).toBeLessThan(1.5);
    expect(Math.abs(all.p95 * 64_157 - (25 + 8.2))).toBeLessThan(1.5);
  });

  it("in Idaho over three seasons is pooled, and known better than after the first", () => {
    // 112,500 inspections and 48 fouled, 101,000 and 34 (capitalpress.com, 10 October 2022): 0.043 % and 0.034 %.
    const before = beliefFromCounts({ screened: 64_157, found: 25 }, 1);
    const after = learned(learned(before, { screened: 112_500, found: 48 }), {
      screened: 101_000,
      found: 34,
    });
    const { mean, p5, p95 } = summaryOf(after);
    // By hand: (25.5 + 82) / (64,158 + 213,500).
    expect(mean).toBeCloseTo(107.5 / 277_658, 12);
    expect(p95 - p5).toBeLessThan(summaryOf(before).p95 - summaryOf(before).p5);
  });

  it("in Wyoming sets 3.6 % of boats aside and finds 0.036 % fouled", () => {
    // Wyoming Game and Fish, 2013: "over 38,800" inspected, 1,404 of high risk, 14 with mussels.
    const setAside = summaryOf(beliefFromCounts({ screened: 38_800, found: 1404 }, 1));
    const fouled = summaryOf(beliefFromCounts({ screened: 38_800, found: 14 }, 1));
    expect(Math.abs(setAside.mean - 0.0362)).toBeLessThan(0.0005);
    expect(Math.abs(fouled.mean - 0.00036)).toBeLessThan(0.00002);
  });
});

describe("what no program can have counted", () => {
  test.each([
    [{ screened: 10, found: 11 }, "11 boats found among 10 screened; allowed: no more than were screened"],
    [{ screened: -1, found: 0 }, "-1 boats screened; allowed: a whole number from 0"],
    [{ screened: 10, found: -1 }, "-1 boats found"],
    [{ screened: 10.5, found: 1 }, "10.5 boats screened"],
    [{ screened: Number.NaN, found: 1 }, "NaN boats screened"],
  ])("is refused: %j", (season, words) => {
    expect(() => learned({ alpha: 1, beta: 1 }, season)).toThrow(LearningError);
    expect(() => learned({ alpha: 1, beta: 1 }, season)).toThrow(words);
    expect(() => beliefFromCounts(season, 1)).toThrow(words);
  });

  test.each([
    [0, 10, "an expected share of 0"],
    [1, 10, "an expected share of 1"],
    [Number.NaN, 10, "an expected share of NaN"],
    [0.5, 0, "a prior of 0 and 0 boats"],
    [0.5, Number.POSITIVE_INFINITY, "a prior of Infinity"],
  ])("is refused as a prior of mean %d worth %d boats", (mean, sample, words) => {
    expect(() => beliefFromMean(mean, sample)).toThrow(LearningError);
    expect(() => beliefFromMean(mean, sample)).toThrow(words);
  });

  test.each([-0.1, 1.1, Number.NaN])("is refused with a weight of %d", (weight) => {
    expect(() => beliefFromCounts({ screened: 1, found: 0 }, weight)).toThrow("allowed: 0 to 1");
  });

  it("is refused as a belief of no boats", () => {
    expect(() => summaryOf({ alpha: 0, beta: 1 })).toThrow(LearningError);
    expect(() => summaryOf({ alpha: 1, beta: 0 })).toThrow(LearningError);
    expect(() => learned({ alpha: 1, beta: -1 }, { screened: 1, found: 0 })).toThrow(LearningError);
  });
});
