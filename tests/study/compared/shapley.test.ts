import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Coalition, everyCoalition, shapleyValues } from "../../../src/study/compared/shapley.js";
import { wholeParts } from "../../../src/study/compared/whole-parts.js";

/** Worth of a function of numbers that go from their first to their second value. */
const worthOf =
  (from: readonly number[], to: readonly number[], result: (values: readonly number[]) => number) =>
  (coalition: Coalition) => [
    result(from.map((value, player) => ((coalition >> player) & 1 ? (to[player] ?? value) : value))),
  ];

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const product = (values: readonly number[]) => values.reduce((total, value) => total * value, 1);

describe("Shapley values", () => {
  it("of a sum are the differences one at a time: 1 → 4 and 10 → 8 explain 3 and −2", () => {
    expect(shapleyValues(2, worthOf([1, 10], [4, 8], sum))).toEqual([[3], [-2]]);
  });

  it("of a product a·b from (1, 1) to (2, 3) are 2 and 3: by hand (1 + 3)/2 and (2 + 4)/2", () => {
    expect(shapleyValues(2, worthOf([1, 1], [2, 3], product))).toEqual([[2], [3]]);
  });

  it("of a product of three doublings are 7/3 each: 8 − 1, shared by symmetry", () => {
    const values = shapleyValues(3, worthOf([1, 1, 1], [2, 2, 2], product));
    for (const [value] of values) expect(value).toBeCloseTo(7 / 3, 12);
  });

  it("of the glove game are 2/3, 1/6, 1/6: one left glove, two right ones, a pair is worth 1", () => {
    const pair = (coalition: Coalition) => [(coalition & 1) === 1 && coalition > 1 ? 1 : 0];
    const values = shapleyValues(3, pair).flat();
    [2 / 3, 1 / 6, 1 / 6].forEach((expected, player) => {
      expect(values[player]).toBeCloseTo(expected, 12);
    });
  });

  it("need every coalition: 8 of 3 players", () => {
    expect(everyCoalition(3)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  it("take several worths side by side", () => {
    const values = shapleyValues(1, (coalition) => [coalition, -5 * coalition]);
    expect(values).toEqual([[1, -5]]);
  });

  const games = fc.integer({ min: 1, max: 5 }).chain((players) =>
    fc.tuple(
      fc.constant(players),
      fc.array(fc.integer({ min: -1_000_000, max: 1_000_000 }), {
        minLength: 2 ** players,
        maxLength: 2 ** players,
      }),
    ),
  );

  it("add up to the whole difference, to the cent, whatever the worths", () => {
    fc.assert(
      fc.property(games, ([players, worths]) => {
        const values = shapleyValues(players, (coalition) => [worths[coalition] ?? 0]).flat();
        const total = (worths.at(-1) ?? 0) - (worths[0] ?? 0);
        expect(sum(values)).toBeCloseTo(total, 6);
        expect(sum(wholeParts(values, total))).toBe(total);
      }),
    );
  });

  it("give nothing to a change that changes nothing", () => {
    fc.assert(
      fc.property(games, ([players, worths]) => {
        const without = (coalition: Coalition) => [worths[coalition & ~1] ?? 0];
        expect(shapleyValues(players, without)[0]?.[0]).toBe(0);
      }),
    );
  });
});

describe("parts in whole units", () => {
  it("give what is left to the largest remainders: 1/3 of 10 thrice is 4, 3, 3", () => {
    expect(wholeParts([10 / 3, 10 / 3, 10 / 3], 10)).toEqual([4, 3, 3]);
  });

  it("may be negative: −0.7 and 3.7 make 3 as −1 and 4, since 0.7 is the larger remainder", () => {
    expect(wholeParts([-0.7, 3.7], 3)).toEqual([-1, 4]);
  });
});
