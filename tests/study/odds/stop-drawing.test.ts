import { describe, expect, it } from "vitest";
import { futuresPerBlock, lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import type { DrawnFutures } from "../../../src/study/odds/joined-futures.js";
import { blocksToDo } from "../../../src/study/odds/stop-drawing.js";

const compared = { baseline: 0, requested: 1 };
const settings = { precision: 0.05, mostFutures: 160 * futuresPerBlock };

/**
 * Blocks of lakes with means that alternate between a mean less and plus a deviation: standard error d/sqrt(n − 1). In both
 * futures of a lake an infestation costs some amount.
 */
function blocksWith(count: number, mean: number, deviation: number, loss = 1e6): DrawnFutures[] {
  const lakes = Array.from({ length: count * lakesPerBlock }, (_, lake) => lake);
  const netBenefit = (lake: number) =>
    mean +
    (Math.floor(lake / lakesPerBlock) % 2 === 0 ? deviation : -deviation) +
    (lake % 2 === 0 ? 500 : -500);
  const none = { ...unasked, expected: perFuture(lakes, () => [900 + loss, 1100 + loss]) };
  const program = perFuture(lakes, () => [1000, 1000]);
  const own = {
    ...unasked,
    expected: perFuture(lakes, (lake) => [1000 + loss, 1000 + loss - 2 * netBenefit(lake)]),
  };
  return [{ options: [{ ...none, program }, own], annuities: new Float64Array(lakes.length), plans: [] }];
}

const perFuture = (lakes: readonly number[], figures: (lake: number) => readonly number[]) =>
  Float64Array.from(lakes.flatMap(figures));

const empty = new Float64Array();
const unasked = {
  ...{ program: empty, cost: empty, everInfested: empty, infestedAtEnd: empty, establishedBy: empty },
  ...{ duty: empty, policy: empty, other: empty, otherCost: empty, byYear: empty, cleanProgram: empty },
};

describe("drawing", () => {
  it("begins with more than a thousand lakes, in blocks", () => {
    expect(blocksToDo([], compared, settings)).toEqual({ blocks: 64 });
    expect(64 * lakesPerBlock).toBeGreaterThan(1000);
    expect(blocksToDo(blocksWith(63, 100, 0), compared, settings)).toEqual({ blocks: 1 });
  });

  it("ends once the standard error of the blocks is at most the share of the mean, however lakes differ", () => {
    // 39/sqrt(63) = 4.91 of 100; 41/sqrt(63) = 5.17: a variance of 41² · 64/63 = 1,707.7 asks for 1,707.7/25 = 68.3
    // blocks, 5 more.
    expect(blocksToDo(blocksWith(64, 100, 39), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(blocksWith(64, -100, 39), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(blocksWith(64, 100, 41), compared, settings)).toEqual({ blocks: 5 });
  });

  it("goes on until the error is small against what an infestation costs, too", () => {
    // 0.4 % of 1000 is 4, below 39/sqrt(63) = 4.91: 39² · 64/63 /16 = 96.57 blocks, 33 more.
    expect(blocksToDo(blocksWith(64, 100, 39, 1000), compared, settings)).toEqual({ blocks: 33 });
    // 0.4 % of a net benefit of 1,000,000 is 4,000, and no infestation costs as much: 31,000/sqrt(63) = 3,906.
    expect(blocksToDo(blocksWith(64, 1e6, 31_000, 1000), compared, settings)).toEqual({ end: "precise" });
  });

  it("goes on by at most as many blocks as there are", () => {
    expect(blocksToDo(blocksWith(64, 100, 900), compared, settings)).toEqual({ blocks: 64 });
    expect(blocksToDo(blocksWith(128, 100, 900), compared, settings)).toEqual({ blocks: 32 });
  });

  it("ends at the most futures, in whole blocks, though these be fewer than usual", () => {
    expect(blocksToDo(blocksWith(160, 100, 900), compared, settings)).toEqual({ end: "cap" });
    const few = { ...settings, mostFutures: 2 * futuresPerBlock + 1 };
    expect(blocksToDo([], compared, few)).toEqual({ blocks: 2 });
    expect(blocksToDo(blocksWith(2, 100, 90), compared, few)).toEqual({ end: "cap" });
  });
});
