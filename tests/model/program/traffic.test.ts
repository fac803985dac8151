import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Traffic } from "../../../src/model/inputs.js";
import {
  coverage,
  launchesBySite,
  launchesMet,
  launchesPerYear,
  launchesWithin,
  type Opening,
  scaledTraffic,
} from "../../../src/model/program/traffic.js";

/** An invented lake: launches at 8:00 and 9:00 on weekends, at noon on weekdays; south has a third of them. */
const byHour = (hours: Readonly<Record<number, number>>) =>
  Array.from({ length: 24 }, (_, hour) => hours[hour] ?? 0);
const lake: Traffic = {
  sites: [
    { id: "north", name: "North", share: 0.75 },
    { id: "south", name: "South", share: 0.25 },
  ],
  dayTypes: [
    {
      id: "weekend",
      name: "Weekend",
      daysPerYear: 10,
      launchesBySite: [byHour({ 8: 30, 9: 15 }), byHour({ 8: 10, 9: 5 })],
    },
    {
      id: "weekday",
      name: "Weekday",
      daysPerYear: 20,
      launchesBySite: [byHour({ 12: 6 }), byHour({ 12: 2 })],
    },
  ],
};

/** Every day type at every site. */
const always = (traffic: Traffic, hours = { from: 0, to: 24 }): Opening[] =>
  traffic.dayTypes.flatMap(({ id: dayType }) =>
    traffic.sites.map(({ id: site }) => ({ dayType, site, ...hours })),
  );

const anyTraffic = fc
  .tuple(
    fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 1, maxLength: 3 }),
    fc.array(
      fc.tuple(
        fc.integer({ min: 1, max: 90 }),
        fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 72, maxLength: 72 }),
      ),
      { minLength: 1, maxLength: 4 },
    ),
  )
  .map(([weights, days]): Traffic => {
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    return {
      sites: weights.map((weight, index) => ({ id: `s${index}`, name: `s${index}`, share: weight / all })),
      dayTypes: days.map(([daysPerYear, hours], type) => ({
        id: `d${type}`,
        name: `d${type}`,
        daysPerYear,
        // One boat at least, so that each site has a year of launches.
        launchesBySite: weights.map((_, site) =>
          hours.slice(site * 24, site * 24 + 24).map((each) => each + 0.1),
        ),
      })),
    };
  });

/** Minutes since midnight, so that both routes meet the same instants. */
const anyHours = fc
  .tuple(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 1, max: 1440 }))
  .filter(([from, to]) => from < to)
  .map(([from, to]) => ({ from: from / 60, to: to / 60 }));

/** Launches met, minute by minute: the other route to the closed form. */
function metByMinutes(traffic: Traffic, openings: readonly Opening[]): number {
  let met = 0;
  for (const { dayType, site, from, to } of openings) {
    const type = traffic.dayTypes.find(({ id }) => id === dayType);
    const hours = type?.launchesBySite[traffic.sites.findIndex(({ id }) => id === site)] ?? [];
    for (let minute = Math.round(from * 60); minute < Math.round(to * 60); minute++) {
      met += ((type?.daysPerYear ?? 0) * (hours[Math.floor(minute / 60)] ?? 0)) / 60;
    }
  }
  return met;
}

describe("coverage", () => {
  it("is that of a count by hand", () => {
    // Launches: 10 × 60 + 20 × 8 = 760. Met: weekends at north from 8:30 on, 10 × (15 + 15) = 300; weekdays at both
    // sites from noon, 20 × 8 = 160.
    const openings = [
      { dayType: "weekend", site: "north", from: 8.5, to: 20 },
      { dayType: "weekday", site: "north", from: 12, to: 13 },
      { dayType: "weekday", site: "south", from: 12, to: 13 },
    ];
    expect(coverage(lake, openings)).toBeCloseTo(460 / 760, 12);
  });

  it("is 1 where stations are always open, and 0 where they never are", () => {
    fc.assert(
      fc.property(anyTraffic, (traffic) => {
        expect(coverage(traffic, always(traffic))).toBeCloseTo(1, 12);
        expect(coverage(traffic, [])).toBe(0);
      }),
      { seed: 41, numRuns: 60 },
    );
  });

  it("is that of a sum minute by minute", () => {
    fc.assert(
      fc.property(anyTraffic, anyHours, anyHours, (traffic, one, other) => {
        const openings = always(traffic).map((each, index) => ({
          ...each,
          ...(index % 2 === 0 ? one : other),
        }));
        const expected = metByMinutes(traffic, openings) / launchesPerYear(traffic);
        expect(coverage(traffic, openings)).toBeCloseTo(expected, 9);
      }),
      { seed: 42, numRuns: 60 },
    );
  });

  it("is never lower for longer hours, nor for one more site or day type", () => {
    fc.assert(
      fc.property(
        anyTraffic,
        anyHours,
        fc.double({ min: 0, max: 24, noNaN: true }),
        (traffic, hours, more) => {
          const openings = always(traffic, hours);
          const before = coverage(traffic, openings);
          const longer = { from: Math.max(0, hours.from - more), to: Math.min(24, hours.to + more) };
          expect(coverage(traffic, always(traffic, longer))).toBeGreaterThanOrEqual(before - 1e-12);
          expect(coverage(traffic, openings.slice(1))).toBeLessThanOrEqual(before + 1e-12);
        },
      ),
      { seed: 43, numRuns: 100 },
    );
  });

  it("does not depend on the scale", () => {
    fc.assert(
      fc.property(anyTraffic, anyHours, fc.integer({ min: 1, max: 1e6 }), (traffic, hours, launches) => {
        const one = scaledTraffic(traffic, 1);
        const many = scaledTraffic(traffic, launches);
        expect(coverage(many, always(traffic, hours))).toBeCloseTo(coverage(one, always(traffic, hours)), 10);
      }),
      { seed: 44, numRuns: 60 },
    );
  });

  it("is refused without launches", () => {
    expect(() => coverage({ ...lake, dayTypes: [] }, [])).toThrow("no launches");
  });
});

describe("traffic scaled to the launches of a year", () => {
  it("brings them all, at each site its share", () => {
    fc.assert(
      fc.property(anyTraffic, fc.integer({ min: 1, max: 1e6 }), (traffic, launches) => {
        const scaled = scaledTraffic(traffic, launches);
        const total = scaled.dayTypes.reduce(
          (sum, { daysPerYear, launchesBySite: bySite }) =>
            sum + daysPerYear * bySite.flat().reduce((day, each) => day + each, 0),
          0,
        );
        expect(total / launches).toBeCloseTo(1, 10);
        for (const [site, bySite] of launchesBySite(scaled).entries()) {
          expect(bySite / launches).toBeCloseTo(traffic.sites[site]?.share ?? 0, 10);
        }
      }),
      { seed: 45, numRuns: 60 },
    );
  });

  it("keeps its shape: twice the launches are twice those of each hour", () => {
    // 760 launches a year before, three quarters of them at north as in the shares
    const [weekend] = scaledTraffic(lake, 1520).dayTypes;
    expect(weekend?.launchesBySite[0]?.[8]).toBeCloseTo(60, 10);
    expect(weekend?.launchesBySite[1]?.[9]).toBeCloseTo(10, 10);
  });

  it("cannot come from a site without boats, which is named", () => {
    const [weekend] = lake.dayTypes;
    if (!weekend) throw new Error("no day type");
    const empty = { ...weekend, launchesBySite: [byHour({ 8: 1 }), byHour({})] };
    expect(() => scaledTraffic({ ...lake, dayTypes: [empty] }, 100)).toThrow("south: no launches");
  });
});

describe("launches met", () => {
  it("have a row for each day type and site, and closed ones meet none", () => {
    const rows = launchesMet(lake, [{ dayType: "weekend", site: "south", from: 8, to: 9 }]);
    expect(rows.map(({ dayType, site, launches, met }) => [dayType, site, launches, met])).toEqual([
      ["weekend", "north", 450, 0],
      ["weekend", "south", 150, 100],
      ["weekday", "north", 120, 0],
      ["weekday", "south", 40, 0],
    ]);
    expect(rows[0]?.open).toBeUndefined();
  });
});

describe("open hours", () => {
  it.each([
    { from: -1, to: 5 },
    { from: 5, to: 25 },
    { from: 8, to: 8 },
    { from: 9, to: 8 },
    { from: Number.NaN, to: 8 },
  ])("from $from to $to are refused", (hours) => {
    expect(() => launchesWithin(byHour({}), hours)).toThrow("allowed from before to, within 0 to 24");
  });
});
