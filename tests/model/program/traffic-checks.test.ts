import { describe, expect, it } from "vitest";
import type { Boats, Traffic } from "../../../src/model/inputs.js";
import { trafficChecks } from "../../../src/model/program/traffic-checks.js";
import { everyMonth } from "../near.js";
import { boats } from "../study.js";

const tolerance = 0.1;
const day = (launches: number) => Array.from({ length: 24 }, (_, hour) => (hour === 9 ? launches : 0));

/** 365 days with so many launches at each of two sites; a month has its own days. */
function traffic(north: number, south: number, daysByMonth?: readonly number[]): Traffic {
  return {
    sites: [
      { id: "north", name: "North", share: 0.5 },
      { id: "south", name: "South", share: 0.5 },
    ],
    dayTypes: [
      { id: "all", name: "All", daysPerYear: 360, daysByMonth, launchesBySite: [day(north), day(south)] },
    ],
  };
}

const checksOf = (changes: Partial<Boats>) => trafficChecks({ ...boats, ...changes }, tolerance);

describe("traffic against what the study says of its launches", () => {
  it("is not held against anything where there is none", () => {
    expect(checksOf({})).toEqual([]);
  });

  it("passes where the year agrees, and says by how much it does not", () => {
    // 360 × (25 + 25) = 18,000, as the 12 × 1,500 launches entered
    expect(checksOf({ traffic: traffic(25, 25) }).map(({ passed }) => passed)).toEqual([true]);
    const [off] = checksOf({ traffic: traffic(30, 30) });
    expect(off).toMatchObject({ passed: false, found: "21,600 against 18,000, differ by 20.0 %" });
    expect(checksOf({ traffic: traffic(27, 27) })[0]?.passed).toBe(true);
  });

  it("is held by month where its days are told by month", () => {
    const even = checksOf({ traffic: traffic(25, 25, everyMonth(30)) });
    expect(even.map(({ passed }) => passed)).toEqual([true, true]);
    // All in July against a twelfth in each month: eleven twelfths stand elsewhere.
    const july = everyMonth(0).map((_, month) => (month === 6 ? 360 : 0));
    expect(checksOf({ traffic: traffic(25, 25, july) })[1]).toMatchObject({
      passed: false,
      found: "91.7 % of the year’s launches fall in another month",
    });
  });

  it("weighs the months of several day types by their launches, where all tell their months", () => {
    // 20 × 50 each month and 10 × 500 more in July, 17,000 in all: 6,000/17,000 − 1/12 too many stand in July.
    const { sites } = traffic(1, 1);
    const ordinary = {
      id: "ordinary",
      name: "Ordinary",
      daysPerYear: 240,
      launchesBySite: [day(25), day(25)],
    };
    const derby = { id: "derby", name: "Derby", daysPerYear: 10, launchesBySite: [day(250), day(250)] };
    const inJuly = everyMonth(0).map((_, month) => (month === 6 ? 10 : 0));
    const dayTypes = [
      { ...ordinary, daysByMonth: everyMonth(20) },
      { ...derby, daysByMonth: inJuly },
    ];
    const told = { launches: everyMonth(17_000 / 12), traffic: { sites, dayTypes } };
    expect(checksOf(told)[1]?.found).toBe("27.0 % of the year’s launches fall in another month");
    const untold = { sites, dayTypes: [ordinary, { ...derby, daysByMonth: inJuly }] };
    expect(checksOf({ ...told, traffic: untold })).toHaveLength(1);
  });

  it("is held by site where sites were counted otherwise than their shares", () => {
    // 40 of 50 at a site that has half: 30 % stand elsewhere
    expect(checksOf({ traffic: traffic(40, 10) })[1]).toMatchObject({
      passed: false,
      found: "30.0 % of the year’s launches fall at another site",
    });
  });

  it("fails where no launches are entered", () => {
    const [year, month] = checksOf({ launches: everyMonth(0), traffic: traffic(25, 25, everyMonth(30)) });
    expect(year).toMatchObject({ passed: false, found: "18,000 against 0, differ by 100.0 %" });
    expect(month).toMatchObject({ passed: false, found: expect.stringMatching(/^100.0 %/) });
  });

  it("fails where none are counted", () => {
    const found = checksOf({ traffic: traffic(0, 0, everyMonth(30)) });
    expect(found.map(({ passed }) => passed)).toEqual([false, false, false]);
    for (const each of found.slice(1)) expect(each.found).toMatch(/^100.0 %/);
  });
});
