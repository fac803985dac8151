import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { SplitError, splitByShares, splitByWeights } from "../../../src/model/money/split.js";

const sumOf = (parts: readonly number[]) => parts.reduce((sum, part) => sum + part, 0);

describe("an amount split by shares", () => {
  test.each([
    // By hand: whole cents first, the cents left over to the largest remainders, of equal ones to the first.
    [100, [0.5, 0.5], [50, 50]],
    [101, [0.5, 0.5], [51, 50]],
    [100, [1 / 3, 1 / 3, 1 / 3], [34, 33, 33]],
    [101, [1 / 3, 1 / 3, 1 / 3], [34, 34, 33]],
    [100, [0.333, 0.333, 0.334], [33, 33, 34]],
    [1, [0.2, 0.5, 0.3], [0, 1, 0]],
    [10, [0.26, 0.26, 0.48], [3, 2, 5]],
    [-101, [0.5, 0.5], [-51, -50]],
    [0, [0.4, 0.6], [0, 0]],
    [100, [0.29, 0.71], [29, 71]],
    [999, [1], [999]],
    [100, [0, 1], [0, 100]],
  ])("of %d cents by %j", (cents, shares, parts) => {
    expect(splitByShares(cents, shares)).toEqual(parts);
  });

  test.each([
    [[0.5, 0.4], "90 %"],
    [[0.5, 0.6], "110 %"],
    [[], "0 %"],
    [[0.5, 0.4999], "99.99 %"],
    [[Number.NaN, 1], "NaN %"],
  ])("is refused for %j", (shares, found) => {
    expect(() => splitByShares(100, shares)).toThrow(SplitError);
    expect(() => splitByShares(100, shares)).toThrow(`sum to ${found}; allowed: 100 % in all`);
  });

  it("is refused for a negative share that the others make up for", () => {
    expect(() => splitByShares(100, [1.5, -0.5])).toThrow("a share of -0.5; allowed: 0 or more");
  });
});

const anyCents = fc.integer({ min: -1e12, max: 1e12 });
const anyWeights = fc
  .array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1, maxLength: 12 })
  .filter((weights) => weights.some((weight) => weight > 1e-3));

describe("an amount split in proportion", () => {
  it("sums to the cent, and no part is a cent or more from its exact one", () => {
    fc.assert(
      fc.property(anyCents, anyWeights, (cents, weights) => {
        const parts = splitByWeights(cents, weights);
        expect(sumOf(parts)).toBe(cents);
        const total = sumOf(weights);
        parts.forEach((part, index) => {
          expect(Math.abs(part - (cents * (weights[index] ?? 0)) / total)).toBeLessThan(1.001);
        });
      }),
      { seed: 51, numRuns: 300 },
    );
  });

  it("gives no less to a larger weight", () => {
    fc.assert(
      fc.property(fc.nat(1e9), anyWeights, (cents, weights) => {
        const parts = splitByWeights(cents, weights);
        const order = weights.map((weight, index) => ({ weight, part: parts[index] ?? 0 }));
        for (const one of order) {
          for (const other of order)
            if (one.weight > other.weight) expect(one.part).toBeGreaterThanOrEqual(other.part);
        }
      }),
      { seed: 52, numRuns: 200 },
    );
  });

  test.each([
    // Published shares whose sum is the whole, so that each comes back to the cent: a water intake of three Texan cities
    // (walkerpartners.com, KXAN), and the partner funds of Utah for 2010 (Utah Division of Wildlife Resources, 2009).
    ["Cedar Park, Leander and Round Rock", 1_346_386, [663_559, 516_922, 165_905]],
    ["technicians and wash units in Utah", 407_861, [204_461, 203_400]],
    // Nelson 2019 for Montana, as reported: 234 million USD a year of recreation, irrigation, infrastructure, taxes.
    ["four sectors of Montana", 234_000_000, [122_000_000, 61_000_000, 47_000_000, 4_000_000]],
  ])("returns the shares that it was made of: %s", (_of, dollars, shares) => {
    expect(splitByWeights(dollars * 100, shares)).toEqual(shares.map((share) => share * 100));
  });

  test.each([
    [[0, 0], "at least one"],
    [[], "at least one"],
    [[1, -1], "a share of -1"],
    [[1, Number.POSITIVE_INFINITY], "a share of Infinity"],
  ])("is refused for %j", (weights, words) => {
    expect(() => splitByWeights(100, weights)).toThrow(SplitError);
    expect(() => splitByWeights(100, weights)).toThrow(words);
  });

  it("is refused for half a cent", () => {
    expect(() => splitByWeights(0.5, [1])).toThrow("a whole number of cents");
  });
});
