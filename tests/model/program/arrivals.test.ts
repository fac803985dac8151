import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Boats, ProgramOption, ProgramSteps } from "../../../src/model/inputs.js";
import { arrivals, missedShare } from "../../../src/model/program/arrivals.js";
import { holdSurvival } from "../../../src/model/program/drying-hold.js";
import { assumed, assumedWith } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { anySteps, share, thoroughSteps } from "../steps.js";
import { ownWayAlone } from "../study.js";

const option = (steps?: ProgramSteps): ProgramOption => ({
  id: steps ? "program" : "none",
  name: "Option",
  ...(steps ? { steps } : {}),
  rampUp: [],
  staff: [],
  equipment: [],
  yearly: [],
  fees: [],
  afterInfestation: { share: 0 },
});

const boatsOf = (classes: ReadonlyArray<readonly [share: number, fouled: number]>): Boats => ({
  launches: [0, 0, 1000, 4000, 8000, 11_000, 13_000, 12_000, 8000, 5000, 2000, 157],
  classes: classes.map(([share, fouled], index) => ({
    id: `class-${index}`,
    name: `Class ${index}`,
    share,
    fouled,
  })),
  otherWays: [],
  comparable: ownWayAlone,
});

// Idaho 2015, state figures in the press: 64,157 inspections, up to 1.29 % of boats from mussel waters in the last 30
// days, about 3 % of those fouled.
const idaho = boatsOf([
  [0.0129, 0.03],
  [0.9871, 0],
]);

const arriving = (steps?: ProgramSteps, source = assumed) =>
  arrivals(idaho, option(steps), productiveLake, source);

describe("boats that arrive", () => {
  it("are fouled as often as in Idaho: 0.039 % of all, 25 of 64,157", () => {
    // 0.03 x 0.0129 = 0.0387 %; 25/64,157 = 0.039 %.
    const { slipThrough, classes } = arriving();
    const launches = classes.reduce((sum, each) => sum + each.launches, 0);
    expect(launches).toBeCloseTo(64_157, 6);
    expect(slipThrough / launches).toBeCloseTo(0.03 * 0.0129, 10);
    expect(Math.abs(slipThrough - 25)).toBeLessThan(0.5);
  });

  it("are 0.02 to 0.045 % fouled in each Idaho year of 2009 to 2022", () => {
    // State figures in the press: 0.021 % in 2016 to 0.043 % in 2021.
    const { slipThrough } = arriving();
    expect(slipThrough / 64_157).toBeGreaterThan(0.0002);
    expect(slipThrough / 64_157).toBeLessThan(0.00045);
  });

  it("all reach the water where an option has no steps", () => {
    const { classes, slipThrough } = arriving();
    expect(classes.map(({ setAside }) => setAside)).toEqual([0, 0]);
    expect(slipThrough).toBe(classes.reduce((sum, { fouled }) => sum + fouled, 0));
  });
});

const full: ProgramSteps = { ...thoroughSteps, inspection: 0.79, hotWash: 0.84 };

describe("inspection and hot wash", () => {
  // Angell and others 2024: trained inspectors removed 79.2 %, hot-water decontamination 84.4 % of staged organisms.
  it("leave 3.4 % if they miss independently", () => {
    // (1 - 0.79)(1 - 0.84) = 0.0336, under independence only.
    expect(missedShare(full, 0)).toBeCloseTo(0.0336, 12);
    expect(Math.round(missedShare(full, 0) * 1000) / 1000).toBe(0.034);
  });

  it("leave 16 % if the wash misses only what inspection missed as well", () => {
    // 1 - max(0.79, 0.84) = 0.16.
    expect(missedShare(full, 1)).toBeCloseTo(0.16, 12);
  });

  it("leave a share between the two bounds at any dependence, and both bounds are shown", () => {
    fc.assert(
      fc.property(anySteps, share, (steps, dependence) => {
        const found = arriving(steps, assumedWith({ "steps.dependence": dependence }));
        const { independent, dependent } = found.slipThroughRange;
        expect(independent).toBeLessThanOrEqual(found.slipThrough + 1e-9);
        expect(dependent).toBeGreaterThanOrEqual(found.slipThrough - 1e-9);
        expect(arriving(steps, assumedWith({ "steps.dependence": 0 })).slipThrough).toBeCloseTo(
          independent,
          9,
        );
        expect(arriving(steps, assumedWith({ "steps.dependence": 1 })).slipThrough).toBeCloseTo(dependent, 9);
      }),
      { seed: 131, numRuns: 100 },
    );
  });
});

describe("the funnel of a season", () => {
  // Wyoming 2013, agency figures in the press: over 38,800 inspected, 1,404 high-risk (3.6 %), 543 of them
  // decontaminated (38.7 %), 14 with mussels (0.036 %).
  const wyoming = boatsOf([[1, 14 / 38_800]]);
  const scaled = { ...wyoming, launches: [0, 0, 0, 0, 9700, 9700, 9700, 9700, 0, 0, 0, 0] };
  const steps = { ...full, falseAlarm: 1390 / (38_800 - 14), washedAnyway: 529 / 1390 };
  const [found] = arrivals(scaled, option(steps), productiveLake, assumed).classes;

  it("has the shares of Wyoming's, of 38,800 boats", () => {
    expect(found?.checked).toBeCloseTo(38_800, 6);
    expect(Math.abs((found?.setAsideInAll ?? 0) / 38_800 - 0.0362)).toBeLessThan(0.0005);
    expect(Math.abs((found?.washed ?? 0) / (found?.setAsideInAll ?? 1) - 0.387)).toBeLessThan(0.0005);
    expect(Math.abs((found?.fouled ?? 0) / 38_800 - 0.00036)).toBeLessThan(0.00001);
  });

  it("accounts for every boat: sealed, checked or not met; set aside is refused, or goes on", () => {
    fc.assert(
      fc.property(anySteps, share, (any, sealed) => {
        const seals = [{ vesselClass: "class-1", share: sealed }];
        for (const each of arriving({ ...any, seals }).classes) {
          expect(each.sealed + each.checked).toBeLessThanOrEqual(each.launches + 1e-9);
          expect(each.setAsideInAll).toBeLessThanOrEqual(each.checked + 1e-9);
          expect(each.refused).toBeLessThanOrEqual(each.setAside + 1e-9);
          for (const part of [each.washed, each.held]) {
            expect(part).toBeLessThanOrEqual(each.setAsideInAll - each.refused + 1e-9);
          }
        }
      }),
      { seed: 134, numRuns: 100 },
    );
  });

  it("lets sealed boats pass unseen, with what they carry", () => {
    const seals = [{ vesselClass: "class-0", share: 1 }];
    expect(arriving({ ...full, seals }).slipThrough).toBeCloseTo(arriving().slipThrough, 9);
  });

  it("follows what a class does otherwise", () => {
    const blind = { ...full, byClass: [{ vesselClass: "class-0", declaration: 0, quickCheck: 0 }] };
    expect(arriving(blind).slipThrough).toBeCloseTo(arriving().slipThrough, 9);
    const other = { ...full, byClass: [{ vesselClass: "class-1", declaration: 0, quickCheck: 0 }] };
    expect(arriving(other).slipThrough).toBeCloseTo(arriving(full).slipThrough, 9);
  });

  it("stops what is refused", () => {
    expect(arriving({ ...thoroughSteps, refusal: 1 }).slipThrough).toBe(0);
  });
});

describe("a drying hold", () => {
  const held = (days: number) =>
    arriving({ ...thoroughSteps, hold: { share: 1, days } }).slipThrough / arriving().slipThrough;

  it("kills small mussels within days of summer air, as at 20 °C and 50 %", () => {
    // Ricciardi and others 1995, abstract: mussels of 10-18 mm live 1-3 days at 20 °C and 50 % (accept 2-4).
    const summer = {
      ...productiveLake,
      species: "zebra" as const,
      airTemperature: everyMonth(20),
      humidity: everyMonth(0.5),
    };
    expect(holdSurvival(4, idaho, summer, assumed)).toBeLessThan(0.05);
    expect(holdSurvival(1, idaho, summer, assumed)).toBeGreaterThan(0.5);
  });

  it("stops nothing in no time, and more the longer it lasts", () => {
    expect(held(0)).toBeCloseTo(1, 9);
    expect(held(5)).toBeLessThan(held(2));
    expect(held(60)).toBeLessThan(0.02);
  });
});

const stepNames = [
  "coverage",
  "declaration",
  "quickCheck",
  "inspection",
  "hotWash",
  "refusal",
  "deterrence",
] as const;

describe("a program's steps", () => {
  const slip = (steps: ProgramSteps) => arriving(steps).slipThrough;
  const none = arriving().slipThrough;

  it("do nothing where the stations are never open and nobody is deterred", () => {
    expect(slip({ ...full, coverage: 0 })).toBeCloseTo(none, 10);
  });

  it("do nothing where neither inspection nor wash removes anything", () => {
    expect(slip({ ...full, inspection: 0, hotWash: 0 })).toBeCloseTo(none, 10);
    expect(slip(thoroughSteps)).toBeCloseTo(none, 10);
  });

  it("stop every boat if they all work perfectly, or if everybody is deterred", () => {
    expect(slip({ ...full, inspection: 1 })).toBeCloseTo(0, 12);
    expect(slip({ ...full, deterrence: 1 })).toBe(0);
  });

  it("never let more boats through when one of them is better", () => {
    fc.assert(
      fc.property(anySteps, fc.constantFrom(...stepNames), share, (steps, key, betterBy) => {
        const better = { ...steps, [key]: steps[key] + (1 - steps[key]) * betterBy };
        expect(slip(better)).toBeLessThanOrEqual(slip(steps) + 1e-9);
        expect(slip(steps)).toBeLessThanOrEqual(none + 1e-9);
        expect(slip(steps)).toBeGreaterThanOrEqual(0);
      }),
      { seed: 132, numRuns: 300 },
    );
  });

  it("account for every fouled boat: not set aside, or set aside and missed or stopped", () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const each of arriving(steps).classes) {
          expect(each.setAside).toBeLessThanOrEqual(each.fouled + 1e-9);
          expect(each.slipThrough).toBeGreaterThanOrEqual(each.fouled - each.setAside - 1e-9);
          expect(each.fouled).toBeCloseTo(
            each.launches * each.vesselClass.fouled * (1 - steps.deterrence),
            9,
          );
        }
      }),
      { seed: 133, numRuns: 100 },
    );
  });
});
