import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lakeRecord } from "../../../src/model/founding/lake-record.js";
import { near } from "./counts.js";

/** Median 1.1e-3 per launch, standard deviation of its logarithm 1.26: notes of the project. */
const prior = { median: 1.1e-3, spread: 1.26 };
/** Every founding is found in its year. */
const atOnce = [1];
/** Chances to be found in the first, second, third and each further year, notes of the project (judged). */
const late = [0.15, 0.5, 0.75, 0.9];

describe("a lake without a find so far", () => {
  // Worked out by a second route: sums over 400,001 points of ln λ, in another language.
  it.each([
    [10, 0.977, 1.06e-3],
    [30, 0.936, 1.0e-3],
    [100, 0.828, 8.58e-4],
    [300, 0.641, 6.57e-4],
    [1000, 0.368, 4.15e-4],
  ])("after %d launches had this chance to be clean, and has this rate", (launches, clean, median) => {
    const found = lakeRecord(prior, [{ years: 1, factor: launches }], atOnce);
    expect(found.chanceOfClean).toBeCloseTo(clean, 3);
    expect(near(prior.median * found.medianFactor, median, 0.005)).toBe(true);
    expect(found.infestedUnseen).toBe(0);
  });

  it("has less spread than the notes' Gamma distribution gives it, by a few hundredths of the chance", () => {
    // Gamma of shape 1.03 and scale 1.58e-3, in closed form: chance (1 + Xθ)^−a = .86, mean a/(1/θ + X) = 1.405e-3.
    const [shape, scale, launches] = [1.03, 1.58e-3, 100];
    expect(shape / (1 / scale + launches)).toBeCloseTo(1.405e-3, 6);
    const found = lakeRecord(prior, [{ years: 1, factor: launches }], atOnce);
    expect(Math.abs(found.chanceOfClean - (1 + launches * scale) ** -shape)).toBeLessThan(0.04);
  });

  it("is infested unseen with about 1 % at 5 launches a year, and about 3 % at 20", () => {
    // Notes of the project, rounded there to whole percents; ten years.
    const unseen = (launches: number) =>
      lakeRecord({ ...prior, median: prior.median * launches }, [{ years: 10, factor: 1 }], late)
        .infestedUnseen;
    expect(Math.round(100 * unseen(5))).toBe(1);
    expect(unseen(20)).toBeGreaterThan(0.025);
    expect(unseen(20)).toBeLessThan(0.04);
  });

  it("of one rate is in closed form", () => {
    // By hand: λ = 0.1, two years, found with .5 in the first year and .75 in the second.
    const found = lakeRecord({ median: 0.1, spread: 0 }, [{ years: 2, factor: 1 }], [0.5, 0.75]);
    const first = (1 - Math.exp(-0.1)) * 0.5 * 0.25;
    const second = (Math.exp(-0.1) - Math.exp(-0.2)) * 0.5;
    const clean = Math.exp(-0.2) + first + second;
    expect(found.chanceOfClean).toBeCloseTo(clean, 12);
    expect(found.infestedUnseen).toBeCloseTo((first + second) / clean, 12);
    expect(found.medianFactor).toBe(1);
  });

  it.each([
    ["many launches", prior, 1000],
    // A chance below the smallest number, at every rate that is likely.
    ["years that were all but sure to bring mussels", { median: 400, spread: 0.0015 }, 2],
  ])("has the rate that the record leaves likely, and its spread: %s", (_name, before, launches) => {
    // By a second route: the mean and the standard deviation of ln λ by sums over 20,001 points from the prior's mode
    // − 12 to + 12 spreads, weighed by exp(−z²/2 − λX), from the largest of them down.
    const points = Array.from({ length: 20_001 }, (_, point) => (12 * (point - 10_000)) / 10_000);
    const logs = points.map((z) => -(z ** 2) / 2 - before.median * Math.exp(before.spread * z) * launches);
    const largest = logs.reduce((most, each) => Math.max(most, each));
    const weights = logs.map((each) => Math.exp(each - largest));
    const meanOf = (values: readonly number[]) =>
      values.reduce((sum, value, point) => sum + value * (weights[point] ?? 0), 0) /
      weights.reduce((sum, weight) => sum + weight);
    const shift = meanOf(points);
    const spread = before.spread * Math.sqrt(meanOf(points.map((z) => (z - shift) ** 2)));
    const found = lakeRecord(before, [{ years: 1, factor: launches }], atOnce);
    expect(near(found.medianFactor, Math.exp(before.spread * shift), 1e-4)).toBe(true);
    expect(near(found.spread, spread, 1e-3)).toBe(true);
  });

  it("is as before where no years passed", () => {
    const found = lakeRecord(prior, [], late);
    expect(found.medianFactor).toBeCloseTo(1, 12);
    expect(found.spread).toBeCloseTo(prior.spread, 5);
    expect([found.chanceOfClean, found.infestedUnseen]).toEqual([expect.closeTo(1, 12), 0]);
  });
});

describe("more years without a find", () => {
  const rate = fc.record({
    median: fc.double({ min: 1e-4, max: 1, noNaN: true }),
    spread: fc.double({ min: 0.1, max: 2, noNaN: true }),
  });
  const period = fc.record({
    years: fc.double({ min: 0, max: 15, noNaN: true }),
    factor: fc.double({ min: 0, max: 3, noNaN: true }),
  });
  const periods = fc.array(period, { maxLength: 3 });

  it("never raise the rate or the chance of it, and never end it", () => {
    fc.assert(
      fc.property(rate, periods, fc.integer({ min: 1, max: 10 }), (before, held, years) => {
        const fewer = lakeRecord(before, held, atOnce);
        const more = lakeRecord(before, [...held, { years, factor: 1 }], atOnce);
        expect(more.medianFactor).toBeLessThanOrEqual(fewer.medianFactor + 1e-12);
        expect(more.medianFactor).toBeGreaterThan(0);
        expect(more.chanceOfClean).toBeLessThanOrEqual(fewer.chanceOfClean + 1e-12);
      }),
      { seed: 231 },
    );
  });

  it("change little where they are changed little", () => {
    fc.assert(
      fc.property(rate, fc.array(period, { minLength: 1, maxLength: 3 }), (before, held) => {
        const longer = held.map(({ years, factor }) => ({ years: years + 1e-7, factor: factor + 1e-7 }));
        const [found, moved] = [held, longer].map((each) => lakeRecord(before, each, late));
        expect(Math.abs((found?.medianFactor ?? 0) - (moved?.medianFactor ?? 1))).toBeLessThan(1e-4);
        expect(Math.abs((found?.infestedUnseen ?? 0) - (moved?.infestedUnseen ?? 1))).toBeLessThan(1e-4);
      }),
      { seed: 232 },
    );
  });

  it("count the same in one period or in two", () => {
    fc.assert(
      fc.property(rate, fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }), (before, a, b) => {
        const one = lakeRecord(before, [{ years: a + b, factor: 1 }], late);
        const two = lakeRecord(
          before,
          [a, b].map((years) => ({ years, factor: 1 })),
          late,
        );
        expect(two.medianFactor).toBeCloseTo(one.medianFactor, 10);
        expect(two.infestedUnseen).toBeCloseTo(one.infestedUnseen, 10);
      }),
      { seed: 233 },
    );
  });
});
