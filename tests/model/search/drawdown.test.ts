import { describe, expect, it } from "vitest";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import {
  drawnDown,
  fastestFall,
  isSameCourse,
  levelYears,
  pointsOf,
  riseOf,
} from "../../../src/model/search/drawdown.js";
import { drawnDownLake } from "../lakes.js";

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

  it("that is refilled at once has the levels of the year from the next day on", () => {
    const atOnce = { ...drawdown, refilled: drawdown.from + drawdown.days };
    expect(riseOf(levels, atOnce)).toBe(0);
    expect([30, 31].map((day) => drawnDown(levels, atOnce)[day])).toEqual([5, 10]);
  });

  it("leaves the levels as they are from the day on which it is refilled, also where they rise faster then", () => {
    // Refilled to 8 m on day 200: 3 m in 170 days, and the lake rises by 2 m in the next 100.
    const late = { ...drawdown, refilled: 200 };
    expect(riseOf(levels, late)).toBeCloseTo(3 / 170, 12);
    expect(drawnDown(levels, late).slice(200, 301)).toEqual(levels.slice(200, 301));
  });

  it("does not rise where the level that it is refilled to lies below its lowest", () => {
    expect(riseOf(levels, { ...drawdown, lowest: 11 })).toBe(0);
  });

  it("that is nowhere lower leaves the levels as they are", () => {
    expect(drawnDown(levels, { ...drawdown, lowest: 10 })).toEqual(levels);
  });
});

describe("the levels of each possible operating year", () => {
  it("are those of the schedule, or of each year of the record", () => {
    const { record: _, ...scheduled } = drawnDownLake;
    expect(levelYears(scheduled)).toEqual([dailyElevations(scheduled.drawdown)]);
    const record = [levels, drawnDown(levels, drawdown)].map((daily, year) => ({ label: `${year}`, daily }));
    expect(levelYears({ ...scheduled, record })).toEqual(record.map(({ daily }) => daily));
  });
});

describe("the same levels all year", () => {
  it("are one point, and a bend is told where it is, by hand", () => {
    const level = levels.map(() => 9);
    expect(pointsOf(level)).toEqual([{ dayOfYear: 0, elevation: 9 }]);
    // Up by a millimetre on the last day of the year: a bend there and on the days beside it.
    const bent = level.with(364, 9.001);
    expect(pointsOf(bent).map(({ dayOfYear }) => dayOfYear)).toEqual([0, 363, 364]);
    expect(isSameCourse(level, bent)).toBe(false);
    expect(isSameCourse(level, level.with(364, 9 + 1e-12))).toBe(true);
  });
});
