import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monthDays } from "../../../src/model/lake/calendar.js";
import {
  dailyElevations,
  dryRuns,
  exposedBand,
  monthlyMeans,
  wettedShares,
} from "../../../src/model/lake/levels.js";

const schedules = fc
  .uniqueArray(fc.integer({ min: 0, max: 364 }), { minLength: 1, maxLength: 8 })
  .chain((days) =>
    fc.tuple(
      fc.constant([...days].sort((a, b) => a - b)),
      fc.array(fc.double({ min: 50, max: 60, noNaN: true }), {
        minLength: days.length,
        maxLength: days.length,
      }),
    ),
  )
  .map(([days, elevations]) =>
    days.map((dayOfYear, index) => ({ dayOfYear, elevation: elevations[index] ?? Number.NaN })),
  );

describe("the operating year", () => {
  it("joins the points of the schedule by straight lines", () => {
    // By hand: from 10 m on day 10 to 20 m on day 20, one metre a day.
    const daily = dailyElevations([
      { dayOfYear: 10, elevation: 10 },
      { dayOfYear: 20, elevation: 20 },
    ]);
    expect(daily).toHaveLength(365);
    expect(daily[10]).toBe(10);
    expect(daily[13]).toBeCloseTo(13, 12);
    expect(daily[20]).toBe(20);
  });

  it("joins the last point to the first across New Year", () => {
    // By hand: from 20 m on day 355 to 0 m on day 5 are 15 days; New Year's Day is 10 days on.
    const daily = dailyElevations([
      { dayOfYear: 5, elevation: 0 },
      { dayOfYear: 355, elevation: 20 },
    ]);
    expect(daily[364]).toBeCloseTo(20 - (20 * 9) / 15, 12);
    expect(daily[0]).toBeCloseTo(20 - (20 * 10) / 15, 12);
    expect(daily[5]).toBe(0);
  });

  it("is level where the schedule has one point", () => {
    expect(new Set(dailyElevations([{ dayOfYear: 200, elevation: 71.5 }]))).toEqual(new Set([71.5]));
  });

  it("meets each point on its day and stays between the lowest and highest point", () => {
    fc.assert(
      fc.property(schedules, (points) => {
        const daily = dailyElevations(points);
        const elevations = points.map(({ elevation }) => elevation);
        for (const { dayOfYear, elevation } of points) expect(daily[dayOfYear]).toBeCloseTo(elevation, 10);
        const band = exposedBand(daily);
        expect(band.lowest).toBeCloseTo(Math.min(...elevations), 10);
        expect(band.highest).toBeCloseTo(Math.max(...elevations), 10);
      }),
      { seed: 101, numRuns: 150 },
    );
  });
});

describe("a dry run", () => {
  const winter = dailyElevations([
    { dayOfYear: 10, elevation: 0 },
    { dayOfYear: 11, elevation: 10 },
    { dayOfYear: 354, elevation: 10 },
    { dayOfYear: 355, elevation: 0 },
  ]);

  it("over New Year is one run", () => {
    // By hand: dry from day 355 to day 10 inclusive, 10 days in December and 11 in January.
    expect(dryRuns(winter, 5)).toEqual([{ startDay: 355, days: 21 }]);
  });

  it("does not happen at or below the lowest level, and lasts all year above the highest", () => {
    expect(dryRuns(winter, 0)).toEqual([]);
    expect(dryRuns(winter, -3)).toEqual([]);
    expect(dryRuns(winter, 11)).toEqual([{ startDay: 0, days: 365 }]);
  });

  it("does not happen at the very level that the lake falls to, for one day", () => {
    // The lowest day has the level of its point itself: 9.7 m less 20/20 of 7.4 m would be less by rounding.
    const daily = dailyElevations([
      { dayOfYear: 0, elevation: 9.7 },
      { dayOfYear: 20, elevation: 2.3 },
      { dayOfYear: 40, elevation: 9.7 },
    ]);
    expect(daily[20]).toBe(2.3);
    expect(dryRuns(daily, 2.3)).toEqual([]);
  });

  it("happens twice where the water falls twice", () => {
    const twice = dailyElevations([
      { dayOfYear: 50, elevation: 10 },
      { dayOfYear: 60, elevation: 0 },
      { dayOfYear: 70, elevation: 10 },
      { dayOfYear: 200, elevation: 10 },
      { dayOfYear: 210, elevation: 0 },
      { dayOfYear: 220, elevation: 10 },
    ]);
    // By hand: below 5 m from the day after the water stands at 5 m, day 56 to 64 and 206 to 214.
    expect(dryRuns(twice, 5)).toEqual([
      { startDay: 56, days: 9 },
      { startDay: 206, days: 9 },
    ]);
  });

  it("has the days that the wetted shares leave out", () => {
    fc.assert(
      fc.property(schedules, fc.double({ min: 49, max: 61, noNaN: true }), (points, elevation) => {
        const daily = dailyElevations(points);
        const dry = dryRuns(daily, elevation).reduce((sum, run) => sum + run.days, 0);
        const wet = wettedShares(daily, elevation).reduce(
          (sum, share, month) => sum + share * (monthDays[month] ?? Number.NaN),
          0,
        );
        expect(dry + wet).toBeCloseTo(365, 9);
      }),
      { seed: 102, numRuns: 200 },
    );
  });

  it("is dry on each of its days and wet on the days around it", () => {
    fc.assert(
      fc.property(schedules, fc.double({ min: 50, max: 60, noNaN: true }), (points, elevation) => {
        const daily = dailyElevations(points);
        const level = (day: number) => daily[(day + 365) % 365] ?? Number.NaN;
        for (const { startDay, days } of dryRuns(daily, elevation)) {
          if (days === 365) continue;
          for (let day = startDay; day < startDay + days; day++) expect(level(day)).toBeLessThan(elevation);
          expect(level(startDay - 1)).toBeGreaterThanOrEqual(elevation);
          expect(level(startDay + days)).toBeGreaterThanOrEqual(elevation);
        }
      }),
      { seed: 103, numRuns: 100 },
    );
  });
});

describe("monthly figures", () => {
  it("are means over the days of the month", () => {
    // By hand: a straight rise from 0 on day 0 to 31 on day 31 has the mean 15 in January.
    const daily = dailyElevations([
      { dayOfYear: 0, elevation: 0 },
      { dayOfYear: 31, elevation: 31 },
    ]);
    expect(monthlyMeans(daily)[0]).toBeCloseTo(15, 10);
    // Under water at 21 m from day 21 on: 10 of January's 31 days.
    expect(wettedShares(daily, 21)[0]).toBeCloseTo(10 / 31, 12);
  });
});
