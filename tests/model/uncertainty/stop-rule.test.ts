import { describe, expect, it, test } from "vitest";
import { randomStream } from "../../../src/model/random/generator.js";
import { normalQuantile } from "../../../src/model/uncertainty/normal-quantile.js";
import { noValues, standardError, withValue } from "../../../src/model/uncertainty/running-moments.js";
import { nextStep } from "../../../src/model/uncertainty/stop-rule.js";

const target = { share: 0.05, error: 1000, least: 50, cap: 5000 };
/** Moments with a given mean and sample variance. */
const moments = (count: number, mean: number, spread: number) => ({
  count,
  mean,
  squares: spread * (count - 1),
});

describe("the stop rule", () => {
  // Mean 10, variance 400, target 0.5: 400/0.25 = 1600 draws are needed (by hand).
  test.each([
    [0, 50],
    [49, 1],
    [100, 100],
    [1000, 600],
    [1599, 1],
  ])("after %d draws of mean 10 and variance 400 asks for %d more", (count, draws) => {
    expect(nextStep(moments(count, 10, 400), target)).toEqual({ step: "more", draws });
  });

  it("is done at 1600 of them, with the standard error 20/√1600", () => {
    expect(nextStep(moments(1600, 10, 400), target)).toEqual({ step: "done", standardError: 0.5 });
    expect(nextStep(moments(1600, -10, 400), target)).toEqual({ step: "done", standardError: 0.5 });
  });

  it("goes on to the largest error where the share of the mean allows more", () => {
    // 400/0.4² = 2500 draws are needed (by hand).
    const finer = { ...target, error: 0.4 };
    expect(nextStep(moments(1600, 10, 400), finer)).toEqual({ step: "more", draws: 900 });
    expect(nextStep(moments(2500, 10, 400), finer)).toEqual({ step: "done", standardError: 0.4 });
  });

  it("never goes beyond the cap, and says when it is reached", () => {
    expect(nextStep(moments(1000, 10, 400), { ...target, cap: 1200 })).toEqual({ step: "more", draws: 200 });
    expect(nextStep(moments(1200, 10, 1200), { ...target, cap: 1200 })).toEqual({
      step: "capped",
      standardError: 1,
    });
  });

  it("doubles the draws while the mean is 0, up to the cap", () => {
    expect(nextStep(moments(100, 0, 9), target)).toEqual({ step: "more", draws: 100 });
    expect(nextStep(moments(3000, 0, 9), target)).toEqual({ step: "more", draws: 2000 });
    expect(nextStep(moments(5000, 0, 5000), target)).toEqual({ step: "capped", standardError: 1 });
  });

  it("judges nothing before the least number of draws, even without spread", () => {
    expect(nextStep(moments(49, 10, 0), target)).toEqual({ step: "more", draws: 1 });
    expect(nextStep(moments(50, 10, 0), target)).toEqual({ step: "done", standardError: 0 });
  });

  it("ends in runs of draws with the mean found as surely as asked", () => {
    // Normal draws of mean 10 and deviation 20; over the runs the error in standard errors has the mean square 1,
    // itself known to √(2/runs): within 4 of them.
    const runs = 300;
    let squares = 0;
    for (let run = 0; run < runs; run++) {
      const { uniform } = randomStream(run, "stop rule");
      let found = noValues;
      let next = nextStep(found, target);
      while (next.step === "more") {
        for (let draw = 0; draw < next.draws; draw++) {
          found = withValue(found, 10 + 20 * normalQuantile(uniform() || 2 ** -53));
        }
        next = nextStep(found, target);
      }
      expect(next.step).toBe("done");
      expect(standardError(found)).toBeLessThanOrEqual(0.05 * Math.abs(found.mean));
      squares += ((found.mean - 10) / next.standardError) ** 2;
    }
    expect(Math.abs(squares / runs - 1)).toBeLessThan(4 * Math.sqrt(2 / runs));
  });

  it.each([
    [{ ...target, share: 0 }, "share is 0; allowed: above 0 and below 1"],
    [{ ...target, error: -1 }, "largest error is -1; allowed: a finite number of 0 or more"],
    [{ ...target, least: 1 }, "least draws is 1; allowed: whole numbers from 2"],
    [{ ...target, cap: 49 }, "most draws is 49; allowed: whole numbers from 50"],
  ])("refuses %j", (wrong, message) => {
    expect(() => nextStep(moments(100, 1, 1), wrong)).toThrow(message);
  });
});
