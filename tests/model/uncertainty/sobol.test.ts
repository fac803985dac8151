import { describe, expect, it, test } from "vitest";
import { at } from "../../../src/lists.js";
import { momentsOf, variance } from "../../../src/model/uncertainty/running-moments.js";
import {
  directionNumbers,
  scrambledSobol,
  sequence,
  sobolDimensions,
} from "../../../src/model/uncertainty/sobol.js";
import { joeKuoDirections } from "../../../src/model/uncertainty/sobol-directions.js";
import { isNet } from "./nets.js";

const points = (dimension: number, count: number) =>
  Array.from(sequence(directionNumbers(dimension), count), (number) => number / 2 ** 32);

describe("the published Sobol sequence", () => {
  it("starts with the published points of three dimensions", () => {
    // Joe and Kuo's notes on generating Sobol sequences (from memory), and scipy 1.17.1:
    // qmc.Sobol(3, scramble=False).random(10)
    expect(points(0, 10)).toEqual([0, 0.5, 0.75, 0.25, 0.375, 0.875, 0.625, 0.125, 0.1875, 0.6875]);
    expect(points(1, 10)).toEqual([0, 0.5, 0.25, 0.75, 0.375, 0.875, 0.125, 0.625, 0.3125, 0.8125]);
    expect(points(2, 10)).toEqual([0, 0.5, 0.25, 0.75, 0.625, 0.125, 0.875, 0.375, 0.9375, 0.4375]);
  });

  // scipy 1.17.1: qmc.Sobol(128, scramble=False, bits=30).random(2**17)[123456][dimension] * 2**17
  test.each([
    [1, 23953],
    [7, 60825],
    [15, 86687],
    [31, 9923],
    [40, 104065],
    [63, 124799],
    [64, 45],
    [80, 130479],
    [100, 69673],
    [120, 15839],
    [127, 75971],
  ])("is scipy's at point 123456 of dimension %d", (dimension, expected) => {
    expect(at(sequence(directionNumbers(dimension), 123_457), 123_456) / 2 ** (32 - 17)).toBe(expected);
  });

  it("is scipy's in all dimensions", () => {
    // scipy 1.17.1: x = qmc.Sobol(128, scramble=False, bits=30).random(2**13) * 2**13;
    // (x[5000] * arange(1, 129)).sum(), (x[8191] * arange(1, 129)).sum()
    const sums = [0, 0];
    for (let dimension = 0; dimension < sobolDimensions; dimension++) {
      const own = sequence(directionNumbers(dimension), 2 ** 13);
      [5000, 8191].forEach((index, place) => {
        sums[place] = at(sums, place) + ((dimension + 1) * at(own, index)) / 2 ** (32 - 13);
      });
    }
    expect(sobolDimensions).toBe(128);
    expect(sums).toEqual([33_900_516, 34_267_228]);
  });
});

describe("the direction numbers", () => {
  it("are odd, each m_k below 2^k, as many as the degree", () => {
    for (const { degree, coefficients, initial } of joeKuoDirections) {
      expect(initial).toHaveLength(degree);
      expect(coefficients).toBeLessThan(2 ** (degree - 1));
      initial.forEach((m, index) => {
        expect(m % 2).toBe(1);
        expect(m).toBeLessThan(2 ** (index + 1));
      });
    }
  });

  it("belong to different primitive polynomials, in order of degree", () => {
    // x^s + a_1 x^(s-1) + ... + 1 is primitive if the powers of x run through all 2^s - 1 residues (definition).
    const codes = joeKuoDirections.map(({ degree, coefficients }) => 2 ** degree + 2 * coefficients + 1);
    expect(codes).toEqual([...new Set(codes)].sort((one, other) => one - other));
    joeKuoDirections.forEach(({ degree }, index) => {
      let residue = 1;
      let steps = 0;
      do {
        residue *= 2;
        if (residue >= 2 ** degree) residue ^= at(codes, index);
        steps += 1;
      } while (residue !== 1);
      expect(steps).toBe(2 ** degree - 1);
    });
  });

  it("have Sobol's property A in every number of dimensions up to 128", () => {
    // Joe and Kuo 2008: the first bits of the first d direction numbers of d dimensions form a matrix that is not
    // singular modulo 2. The recurrence is that of their notes, in whole numbers of any length.
    const firstBits = [{ degree: 0, coefficients: 0, initial: [] }, ...joeKuoDirections].map(
      ({ degree, coefficients, initial }) => {
        const m = initial.map(BigInt);
        for (let k = m.length; k < 128; k++) {
          if (degree === 0) m.push(1n);
          else {
            let next = at(m, k - degree) ^ (at(m, k - degree) << BigInt(degree));
            for (let back = 1; back < degree; back++) {
              if ((coefficients >> (degree - 1 - back)) & 1) next ^= at(m, k - back) << BigInt(back);
            }
            m.push(next);
          }
        }
        return m.reduce((bits, each, k) => bits | (((each >> BigInt(k)) & 1n) << BigInt(k)), 0n);
      },
    );
    for (let size = 1; size <= 128; size++) {
      expect(rank(firstBits.slice(0, size).map((bits) => bits & ((1n << BigInt(size)) - 1n)))).toBe(size);
    }
  });
});

/** Rank modulo 2 of rows of bits. */
function rank(rows: readonly bigint[]): number {
  const pivots: bigint[] = [];
  for (const row of rows) {
    let left = row;
    for (const pivot of pivots) if ((left ^ pivot) < left) left ^= pivot;
    if (left > 0n) pivots.push(left);
    pivots.sort((one, other) => (one < other ? 1 : -1));
  }
  return pivots.length;
}

describe("scrambled Sobol points", () => {
  const ids = ["price", "growth", "boats"];
  const columns = (seed: number, count: number) => {
    const plan = scrambledSobol(seed, ids, count);
    return ids.map((id) => plan.get(id) ?? []);
  };

  it("of the first two dimensions fill every elementary box once, like the published ones", () => {
    for (let m = 0; m <= 10; m++) {
      expect(isNet(points(0, 2 ** m), points(1, 2 ** m), m)).toBe(true);
      for (const seed of [1, 2, 3]) {
        const [first = [], second = []] = columns(seed, 2 ** m);
        expect(isNet(first, second, m)).toBe(true);
      }
    }
    const [, second = [], third = []] = columns(1, 16);
    expect(isNet(second, third, 4)).toBe(false);
  });

  it("fill in every dimension each of n equal parts once", () => {
    const many = Array.from({ length: sobolDimensions }, (_, index) => `id ${index}`);
    for (const column of scrambledSobol(4, many, 256).values()) {
      expect(new Set(column.map((share) => Math.floor(share * 256))).size).toBe(256);
    }
  });

  it("are uniform over seeds at each draw (4 standard errors), and strictly between 0 and 1", () => {
    const seeds = 1000;
    for (const draw of [0, 3]) {
      const values = Array.from({ length: seeds }, (_, seed) => at(columns(seed, 4)[2] ?? [], draw));
      const mean = values.reduce((sum, value) => sum + value, 0) / seeds;
      const squares = values.reduce((sum, value) => sum + (value - 1 / 2) ** 2, 0) / seeds;
      expect(Math.abs(mean - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / seeds));
      expect(Math.abs(squares - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / seeds));
      expect(Math.min(...values)).toBeGreaterThan(0);
      expect(Math.max(...values)).toBeLessThan(1);
    }
  });

  it("estimate a smooth mean without bias, and surer than a hundredth of the variance of independent draws", () => {
    // E(xyz) = 1/8, variance (1/3)³ - (1/8)² of one draw, by hand.
    const [count, seeds] = [256, 60];
    const means = Array.from({ length: seeds }, (_, seed) => {
      const [x = [], y = [], z = []] = columns(seed, count);
      return x.reduce((sum, each, draw) => sum + each * at(y, draw) * at(z, draw), 0) / count;
    });
    const moments = momentsOf(means);
    expect(Math.abs(moments.mean - 1 / 8)).toBeLessThan(4 * Math.sqrt(variance(moments) / seeds));
    expect(variance(moments)).toBeLessThan((1 / 27 - 1 / 64) / count / 100);
  });

  it("stay the same when an id is added at the end, and change after one added before", () => {
    const before = scrambledSobol(7, ["a", "b"], 64);
    const atEnd = scrambledSobol(7, ["a", "b", "c"], 64);
    expect(atEnd.get("a")).toEqual(before.get("a"));
    expect(atEnd.get("b")).toEqual(before.get("b"));
    expect(scrambledSobol(7, ["a", "c", "b"], 64).get("b")).not.toEqual(before.get("b"));
    expect(scrambledSobol(8, ["a", "b"], 64).get("a")).not.toEqual(before.get("a"));
  });

  it("are refused for counts that lose the balance, too many ids, and an id given twice", () => {
    expect(() => scrambledSobol(1, ["a"], 100)).toThrow(
      "count of draws is 100; allowed for Sobol points: powers of 2",
    );
    const many = Array.from({ length: 129 }, (_, index) => `${index}`);
    expect(() => scrambledSobol(1, many, 4)).toThrow("129 ids for Sobol points; allowed: up to 128");
    expect(() => scrambledSobol(1, ["a", "a"], 4)).toThrow("the id a is given twice");
    expect(() => directionNumbers(128)).toThrow("dimension of the Sobol sequence is 128");
  });
});
