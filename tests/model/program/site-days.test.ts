import { describe, expect, it } from "vitest";
import type { ProgramOption, Traffic } from "../../../src/model/inputs.js";
import { arrivals } from "../../../src/model/program/arrivals.js";
import { sealedShare, siteDays } from "../../../src/model/program/site-days.js";
import { coverage, scaledTraffic } from "../../../src/model/program/traffic.js";
import { assumed } from "../assumptions.js";
import { drawnDownLake } from "../lakes.js";
import { boats, noProgram, program } from "../study.js";

const hours = (from: number, launches: readonly number[]) =>
  Array.from({ length: 24 }, (_, hour) => launches[hour - from] ?? 0);

/** Invented: all boats between 6:00 and 12:00. */
const traffic: Traffic = {
  sites: [
    { id: "north", name: "North", share: 0.6 },
    { id: "south", name: "South", share: 0.4 },
  ],
  dayTypes: [
    {
      id: "busy",
      name: "Busy",
      daysPerYear: 100,
      launchesBySite: [hours(6, [6, 12, 18, 12, 6, 6]), hours(6, [4, 8, 12, 8, 4, 4])],
    },
    {
      id: "calm",
      name: "Calm",
      daysPerYear: 200,
      launchesBySite: [hours(6, [3, 3, 3, 3, 3, 3]), hours(6, [2, 2, 2, 2, 2, 2])],
    },
  ],
};

const openings = [
  { dayType: "busy", site: "north", from: 6.5, to: 10.5 },
  { dayType: "busy", site: "south", from: 6, to: 12 },
  { dayType: "calm", site: "north", from: 8, to: 12 },
];

describe("days at sites", () => {
  it("have the boats of each hour from opening, site by site", () => {
    const days = siteDays(traffic, openings, 1);
    expect(days.map(({ id, arrivalsByHour }) => [id, arrivalsByHour])).toEqual([
      // by hand, half of each hour: 3 + 6, 6 + 9, 9 + 6, 6 + 3
      ["north/busy", [9, 15, 15, 9]],
      ["north/calm", [3, 3, 3, 3]],
      ["south/busy", [4, 8, 12, 8, 4, 4]],
    ]);
    expect(days[0]).toMatchObject({
      siteId: "north",
      siteName: "North",
      dayTypeId: "busy",
      daysPerYear: 100,
    });
  });

  it("have none where a site is closed all year", () => {
    expect(siteDays(traffic, [], 1)).toEqual([]);
  });

  it("check as many boats in a year as pass through the steps of the option", () => {
    const launches = boats.launches.reduce((sum, month) => sum + month, 0);
    const scaled = scaledTraffic(traffic, launches);
    const steps = program.steps;
    if (!steps) throw new Error("the program has steps");
    const seals = [{ vesselClass: "local", share: 0.4 }];
    const option: ProgramOption = {
      ...program,
      steps: { ...steps, seals, coverage: coverage(scaled, openings) },
    };
    const checked = arrivals(boats, option, drawnDownLake, assumed).classes.reduce(
      (sum, each) => sum + each.checked,
      0,
    );
    const days = siteDays(scaled, openings, 1 - sealedShare(boats.classes, seals));
    const atStations = days.reduce(
      (sum, { daysPerYear, arrivalsByHour }) =>
        sum + daysPerYear * arrivalsByHour.reduce((day, each) => day + each, 0),
      0,
    );
    expect(atStations / checked).toBeCloseTo(1, 10);
  });
});

describe("a program that is never open and deters no one", () => {
  it("lets through what no program lets through; one that is always open what coverage 1 does", () => {
    const steps = program.steps;
    if (!steps) throw new Error("the program has steps");
    const slip = (share: number) =>
      arrivals(
        boats,
        { ...program, steps: { ...steps, deterrence: 0, coverage: share } },
        drawnDownLake,
        assumed,
      ).slipThrough;
    const none = arrivals(boats, noProgram, drawnDownLake, assumed).slipThrough;
    const always = traffic.dayTypes.flatMap(({ id: dayType }) =>
      traffic.sites.map(({ id: site }) => ({ dayType, site, from: 0, to: 24 })),
    );
    expect(slip(coverage(traffic, []))).toBeCloseTo(none, 10);
    expect(slip(coverage(traffic, always))).toBeCloseTo(slip(1), 10);
    expect(slip(coverage(traffic, openings))).toBeLessThan(none);
  });
});

describe("the share that passes with a seal", () => {
  it("is that of its classes", () => {
    const classes = [
      { id: "local", share: 0.6 },
      { id: "other", share: 0.4 },
    ];
    expect(sealedShare(classes, [{ vesselClass: "local", share: 0.5 }])).toBeCloseTo(0.3, 12);
    expect(sealedShare(classes, [])).toBe(0);
  });
});
