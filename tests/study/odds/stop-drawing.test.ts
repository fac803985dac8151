import { describe, expect, it } from "vitest";
import { futuresPerBlock } from "../../../src/model/futures/draw-plan.js";
import type { LakeFutures } from "../../../src/study/odds/draws.js";
import { blocksToDo } from "../../../src/study/odds/stop-drawing.js";

const compared = { baseline: 0, requested: 1 };
const settings = { precision: 0.05, mostFutures: 5 * futuresPerBlock };

/** A lake in whose two futures the requested option brings a net benefit on average. */
const lakeWith = (netBenefit: number): LakeFutures => ({
  expected: [new Float64Array([900, 1100]), new Float64Array([1000, 1000 - 2 * netBenefit])],
  cost: [],
  establishment: [],
  program: [],
  everInfested: [],
  infestedAtEnd: [],
  ...{ duty: [], policy: [], other: [], otherCost: [] },
  byYear: [],
  annuity: 1,
});
/** Net benefits that alternate between a mean less and plus a deviation: standard error d/sqrt(n − 1). */
const lakesWith = (count: number, mean: number, deviation: number) =>
  Array.from({ length: count }, (_, lake) => lakeWith(mean + (lake % 2 === 0 ? deviation : -deviation)));

describe("drawing", () => {
  it("begins with two blocks", () => {
    expect(blocksToDo([], compared, settings)).toEqual({ blocks: 2 });
    expect(blocksToDo(lakesWith(16, 100, 0), compared, settings)).toEqual({ blocks: 1 });
  });

  it("ends once the standard error is at most the share of the mean", () => {
    // 27/sqrt(31) = 4.85 of 100; 29/sqrt(31) = 5.21.
    expect(blocksToDo(lakesWith(32, 100, 27), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(lakesWith(32, -100, 27), compared, settings)).toEqual({ end: "precise" });
    expect(blocksToDo(lakesWith(32, 100, 29), compared, settings)).toEqual({ blocks: 1 });
  });

  it("goes on by as many blocks as the variance so far asks for, at most as many as there are", () => {
    // A variance of 38² · 32/31 asks for 1491/25 = 59.6 lakes: 28 more, two blocks.
    expect(blocksToDo(lakesWith(32, 100, 38), compared, settings)).toEqual({ blocks: 2 });
    expect(blocksToDo(lakesWith(32, 100, 90), compared, settings)).toEqual({ blocks: 2 });
    expect(blocksToDo(lakesWith(64, 100, 90), compared, settings)).toEqual({ blocks: 1 });
  });

  it("ends at the most futures, in whole blocks", () => {
    expect(blocksToDo(lakesWith(80, 100, 90), compared, settings)).toEqual({ end: "cap" });
    const mostFutures = 2 * futuresPerBlock + 1;
    expect(blocksToDo(lakesWith(32, 100, 90), compared, { ...settings, mostFutures })).toEqual({
      end: "cap",
    });
  });
});
