import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fnv1a64, randomStream, splitMix64, xoshiro128 } from "../../../src/model/random/generator.js";

const take = <T>(count: number, next: () => T): T[] => Array.from({ length: count }, next);

describe("the published generators", () => {
  it("xoshiro128** gives the reference output", () => {
    // Reference xoshiro128starstar.c 1.1 from state 1, 2, 3, 4, as in the test vectors of Rust's rand_xoshiro.
    const published = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ];
    expect(take(10, xoshiro128([1, 2, 3, 4]))).toEqual(published);
  });

  it("SplitMix64 gives the reference output", () => {
    // Reference splitmix64.c from seed 1234567, a vector in common use.
    expect(take(5, splitMix64(1234567n))).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ]);
  });

  it("FNV-1a gives the authors' hashes", () => {
    // Noll's test_fnv.c: "", "a" and "foobar".
    expect(fnv1a64("")).toBe(0xcbf29ce484222325n);
    expect(fnv1a64("a")).toBe(0xaf63dc4c8601ec8cn);
    expect(fnv1a64("foobar")).toBe(0x85944171f73967e8n);
  });
});

describe("a stream", () => {
  it("is set by seed and text alone, whatever is drawn elsewhere", () => {
    fc.assert(
      fc.property(fc.nat(), fc.string(), fc.string(), (seed, id, other) => {
        const alone = take(20, randomStream(seed, id).uniform);
        const first = randomStream(seed, other);
        const among = randomStream(seed, id);
        const mixed = take(20, () => {
          first.exponential(1);
          return among.uniform();
        });
        expect(mixed).toEqual(alone);
      }),
      { seed: 141, numRuns: 100 },
    );
  });

  it("differs for another seed and for another text, also where digits could move between them", () => {
    const starts = [
      [1, "dock"],
      [2, "dock"],
      [1, "docks"],
      [1, "1/dock"],
      [11, "dock"],
      [1, ""],
    ] as const;
    const firsts = starts.map(([seed, id]) => randomStream(seed, id).uniform());
    expect(new Set(firsts).size).toBe(starts.length);
  });

  it.each([-1, 0.5, Number.NaN, 2 ** 53])("refuses the seed %s and says what is allowed", (seed) => {
    expect(() => randomStream(seed, "dock")).toThrow(/seed is .*; allowed whole numbers from 0/);
  });
});

const count = 100_000;

describe("uniform numbers", () => {
  const { uniform } = randomStream(7, "uniformity");
  const drawn = take(count, uniform);

  it("lie in [0, 1) and are multiples of 2^-53", () => {
    const fitting = drawn.filter((each) => each >= 0 && each < 1 && Number.isInteger(each * 2 ** 53));
    expect(fitting).toHaveLength(count);
  });

  it("have the mean 1/2 and the variance 1/12 within 4 standard errors", () => {
    // Variance of a uniform number 1/12, of its squared deviation 1/80 - 1/144 = 1/180: by hand.
    const mean = drawn.reduce((sum, each) => sum + each, 0) / count;
    const variance = drawn.reduce((sum, each) => sum + (each - 1 / 2) ** 2, 0) / count;
    expect(Math.abs(mean - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / count));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / count));
  });

  it("fill 100 equal cells evenly, and 100 cells of successive pairs", () => {
    // Chi-square of 99 degrees of freedom: 99.99 % lie below 160.06 (Wilson-Hilferty: 99 (1 - 2/891 +
    // 3.719 sqrt(2/891))^3 = 160.1, by hand), and 99.99 % above 54.
    const chiSquare = (cells: readonly number[]) => {
      const found = Array<number>(100).fill(0);
      for (const cell of cells) found[cell] = (found[cell] ?? 0) + 1;
      const expected = cells.length / 100;
      return found.reduce((sum, each) => sum + (each - expected) ** 2 / expected, 0);
    };
    const singles = drawn.map((each) => Math.floor(each * 100));
    const pairs = take(count / 2, () => 0).map(
      (_, index) =>
        Math.floor((drawn[2 * index] ?? 0) * 10) * 10 + Math.floor((drawn[2 * index + 1] ?? 0) * 10),
    );
    for (const cells of [singles, pairs]) {
      expect(chiSquare(cells)).toBeLessThan(160.1);
      expect(chiSquare(cells)).toBeGreaterThan(54);
    }
  });

  it("of two ids that differ in one letter are not correlated", () => {
    const other = randomStream(7, "uniformitz");
    const product = drawn.reduce((sum, each) => sum + (each - 1 / 2) * (other.uniform() - 1 / 2), 0) / count;
    expect(Math.abs(product)).toBeLessThan(4 * (1 / 12 / Math.sqrt(count)));
  });
});

describe("exponential numbers", () => {
  it("are the inversion -mean ln(1 - u) of the uniform ones", () => {
    const one = randomStream(3, "boats");
    const other = randomStream(3, "boats");
    for (let draw = 0; draw < 100; draw++) {
      expect(one.exponential(5)).toBeCloseTo(-5 * Math.log(1 - other.uniform()), 10);
    }
  });

  it("have their mean and outlast it with chance 1/e, within 4 standard errors", () => {
    const { exponential } = randomStream(7, "exponential");
    const drawn = take(count, () => exponential(3));
    const mean = drawn.reduce((sum, each) => sum + each, 0) / count;
    const longer = drawn.filter((each) => each > 3).length / count;
    expect(Math.abs(mean - 3)).toBeLessThan((4 * 3) / Math.sqrt(count));
    expect(Math.abs(longer - 1 / Math.E)).toBeLessThan(
      4 * Math.sqrt((1 / Math.E) * ((1 - 1 / Math.E) / count)),
    );
  });
});
