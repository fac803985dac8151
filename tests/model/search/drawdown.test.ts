import { describe, expect, it } from "vitest";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import { drawnDown, fastestFall, pointsOf, riseOf } from "../../../src/model/search/drawdown.js";

/** 10 m all year but for a fall to 8 m on day 200 and back. */
const levels = dailyElevations([
  { dayOfYear: 100, elevation: 10 },
  { dayOfYear: 200, elevation: 8 },
  { dayOfYear: 300, elevation: 10 },
]);
const drawdown = { lowest: 5, from: 10, days: 20, refilled: 80, fall: 0.1 };

describe("a drawdown", () => {
  const drawn = drawnDown(levels, drawdown);

  it("falls at its rate, across the turn of the year, keeps its lowest level and rises evenly, by hand", () => {
    // On day 0, ten days before, it is 10 × 0.1 m above 5 m; 40 days before it meets 9 m, 50 days before the lake.
    expect([0, 10, 30].map((day) => drawn[day])).toEqual([6, 5, 5].map((level) => expect.closeTo(level, 12)));
    expect(drawn[365 + 10 - 40]).toBeCloseTo(9, 12);
    expect(drawn[365 + 10 - 51]).toBe(10);
    // From day 30 to day 80, 5 m in 50 days.
    expect(riseOf(levels, drawdown)).toBeCloseTo(0.1, 12);
    expect(drawn[55]).toBeCloseTo(7.5, 12);
    expect([80, 81, 200].map((day) => drawn[day])).toEqual([10, 10, 8]);
  });

  it("falls no faster than its rate", () => {
    expect(fastestFall(levels)).toBeCloseTo(0.02, 12);
    expect(fastestFall(drawn)).toBeCloseTo(0.1, 12);
  });

  it("is told by few points that give the same levels", () => {
    const points = pointsOf(drawn);
    expect(points.length).toBeLessThan(12);
    dailyElevations(points).forEach((level, day) => {
      expect(level).toBeCloseTo(drawn[day] ?? Number.NaN, 9);
    });
  });

  it("that is nowhere lower leaves the levels as they are", () => {
    expect(drawnDown(levels, { ...drawdown, lowest: 10 })).toEqual(levels);
  });
});
