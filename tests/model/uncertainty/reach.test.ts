import { describe, expect, it } from "vitest";
import { reached, valueAtPlace } from "../../../src/model/uncertainty/reach.js";

describe("what a reach makes of a value", () => {
  // By hand.
  it("is a share of it to either side, or so much in its own unit", () => {
    expect(reached("relative", 40, 0.25)).toEqual({ low: 30, high: 50 });
    expect(reached("absolute", 40, 3)).toEqual({ low: 37, high: 43 });
  });

  it("is a share whose odds are divided and multiplied", () => {
    // Odds of one to one, a third of them and three times as many: 1/4 and 3/4; of one to four: 1/13 and 3/7.
    const range = (share: number) => {
      const { low, high } = reached("log-odds", share, Math.log(3));
      return [low, high];
    };
    expect(range(1 / 2)).toEqual([expect.closeTo(1 / 4, 12), expect.closeTo(3 / 4, 12)]);
    expect(range(1 / 5)).toEqual([expect.closeTo(1 / 13, 12), expect.closeTo(3 / 7, 12)]);
  });

  it("has its ends at places one below and one above what was given, in even steps on each side", () => {
    const places = [-1, -0.5, 0, 0.5, 1].map((place) => valueAtPlace(10, { low: 6, high: 18 }, place));
    expect(places).toEqual([6, 8, 10, 14, 18]);
  });
});
