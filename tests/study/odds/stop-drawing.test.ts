import { describe, expect, it } from "vitest";
import { futuresPerBlock, lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { type DrawnFutures, noneDrawn } from "../../../src/study/odds/joined-futures.js";
import { blocksToDo } from "../../../src/study/odds/stop-drawing.js";

const compared = { baseline: 0, requested: 1 };
const settings = { precision: 0.05, mostFutures: 40 * futuresPerBlock };

/**
 * Blocks of lakes with means that alternate between a mean less and plus a deviation: standard error d/sqrt(n − 1). In both
 * futures of a lake an infestation costs some amount.
 */
function blocksWith(count: number, mean: number, deviation: number, loss = 1e6): DrawnFutures {
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
  return { ...noneDrawn, options: [{ ...none, program }, own], annuities: new Float64Array(lakes.length) };
}

const perFuture = (lakes: readonly number[], figures: (lake: number) => readonly number[]) =>
  Float64Array.from(lakes.flatMap(figures));

const empty = new Float64Array();
const unasked = {
  ...{ program: empty, cost: empty, everInfested: empty, infestedAtEnd: empty, establishedBy: empty },
  ...{ duty: empty, policy: empty, other: empty, otherCost: empty, byYear: empty, cleanProgram: empty },
};

describe("drawing", () => {
  it("begins with more than two hundred lakes, in blocks", () => {
    expect(blocksToDo(noneDrawn, compared, settings)).toEqual({ blocks: 16 });
    expect(16 * lakesPerBlock).toBeGreaterThan(200);
    expect(blocksToDo(blocksWith(15, 100, 0), compared, settings)).toEqual({ blocks: 1 });
  });

  it("ends once the standard error of the blocks is at most the share of the mean, however lakes differ", () => {
    // 19/sqrt(15) = 4.91 of 100; 20/sqrt(15) = 5.16. A variance of 20² · 16/15 asks for 427/25 = 17.1 blocks.
    expect(blocksToDo(blocksWith(16, 100, 19), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(blocksWith(16, -100, 19), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(blocksWith(16, 100, 20), compared, settings)).toEqual({ blocks: 2 });
  });

  it("goes on until the error is small against what an infestation costs, too", () => {
    // 1 % of 400 is 4, below 19/sqrt(15) = 4.91: 19² · 16/15 /16 = 24.07 blocks, nine more.
    expect(blocksToDo(blocksWith(16, 100, 19, 400), compared, settings)).toEqual({ blocks: 9 });
    // 1 % of a net benefit of 1,000,000 is 10,000, and no infestation costs as much: 38,000/sqrt(15) = 9,812.
    expect(blocksToDo(blocksWith(16, 1e6, 38_000, 1000), compared, settings)).toEqual({ end: "precise" });
  });

  it("goes on by at most as many blocks as there are", () => {
    expect(blocksToDo(blocksWith(16, 100, 90), compared, settings)).toEqual({ blocks: 16 });
    expect(blocksToDo(blocksWith(32, 100, 90), compared, settings)).toEqual({ blocks: 8 });
  });

  it("ends at the most futures, in whole blocks, though these be fewer than usual", () => {
    expect(blocksToDo(blocksWith(40, 100, 90), compared, settings)).toEqual({ end: "cap" });
    const few = { ...settings, mostFutures: 2 * futuresPerBlock + 1 };
    expect(blocksToDo(noneDrawn, compared, few)).toEqual({ blocks: 2 });
    expect(blocksToDo(blocksWith(2, 100, 90), compared, few)).toEqual({ end: "cap" });
  });
});
