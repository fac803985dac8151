import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { correlation } from "../../../src/model/uncertainty/correlation.js";
import { latinHypercube } from "../../../src/model/uncertainty/latin-hypercube.js";
import { momentsOf, variance } from "../../../src/model/uncertainty/running-moments.js";

const column = (seed: number, id: string, count: number) => latinHypercube(seed, [id], count).get(id) ?? [];

describe("a Latin hypercube", () => {
  it("has one share of each column in each stratum, inside (0, 1)", () => {
    fc.assert(
      fc.property(fc.nat(), fc.string(), fc.integer({ min: 1, max: 3000 }), (seed, id, count) => {
        const strata = column(seed, id, count).map((share) => Math.floor(share * count));
        expect(strata.toSorted((one, other) => one - other)).toEqual(
          Array.from({ length: count }, (_, index) => index),
        );
      }),
      { seed: 311, numRuns: 60 },
    );
  });

  it("keeps that at the most draws allowed", () => {
    const count = 2 ** 20;
    const found = new Uint8Array(count);
    for (const share of column(1, "price", count)) found[Math.floor(share * count)] = 1;
    expect(found.every((each) => each === 1)).toBe(true);
  });

  it("has columns that are set by seed, id and count alone, whatever ids are beside them", () => {
    const all = latinHypercube(5, ["price", "growth", "boats"], 200);
    const fewer = latinHypercube(5, ["boats", "price"], 200);
    expect(fewer.get("price")).toEqual(all.get("price"));
    expect(fewer.get("boats")).toEqual(all.get("boats"));
    expect(all.get("growth")).not.toEqual(all.get("price"));
    expect(column(6, "price", 200)).not.toEqual(all.get("price"));
  });

  it("puts its draws evenly, in their order and within the strata (4 standard errors)", () => {
    // Over seeds the first share is uniform: mean 1/2, variance 1/12; so is its place in its stratum.
    const seeds = 2000;
    const count = 10;
    const firsts = Array.from({ length: seeds }, (_, seed) => column(seed, "price", count)[0] ?? Number.NaN);
    const places = firsts.map((share) => share * count - Math.floor(share * count));
    for (const values of [firsts, places]) {
      const mean = values.reduce((sum, value) => sum + value, 0) / seeds;
      const squares = values.reduce((sum, value) => sum + (value - 1 / 2) ** 2, 0) / seeds;
      expect(Math.abs(mean - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / seeds));
      expect(Math.abs(squares - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / seeds));
    }
  });

  it("has columns without correlation, within 4 standard errors 1/√(n - 1)", () => {
    const count = 5000;
    const columns = [...latinHypercube(9, ["a", "b", "c"], count).values()];
    const pairs = [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const;
    for (const [one, other] of pairs) {
      const found = correlation(columns[one] ?? [], columns[other] ?? []);
      expect(Math.abs(found)).toBeLessThan(4 / Math.sqrt(count - 1));
    }
  });

  it("makes the mean of a sum far surer than independent draws do", () => {
    // Stratified in each term, the variance of the mean of x + y is 2/(12 n³) instead of 2/(12 n) (by hand): within
    // 4 standard errors √(2/(seeds - 1)) of a variance.
    const [count, seeds] = [50, 400];
    const means = Array.from({ length: seeds }, (_, seed) => {
      const plan = latinHypercube(seed, ["x", "y"], count);
      return [...plan.values()].flat().reduce((sum, share) => sum + share, 0) / count;
    });
    const ratio = variance(momentsOf(means)) / (2 / 12 / count ** 3);
    expect(Math.abs(ratio - 1)).toBeLessThan(4 * Math.sqrt(2 / (seeds - 1)));
  });

  it("refuses other counts, an id given twice and a wrong seed", () => {
    expect(() => latinHypercube(1, ["a"], 0)).toThrow("count of draws is 0; allowed: whole numbers from 1");
    expect(() => latinHypercube(1, ["a"], 2.5)).toThrow("count of draws is 2.5");
    expect(() => latinHypercube(1, ["a"], 2 ** 20 + 1)).toThrow("to 1048576");
    expect(() => latinHypercube(1, ["a", "b", "a"], 4)).toThrow("the id a is given twice");
    expect(() => latinHypercube(-1, ["a"], 4)).toThrow("seed is -1");
  });
});
