import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Boats, ProgramOption, ProgramSteps } from "../../../src/model/inputs.js";
import { arrivals, passingShare } from "../../../src/model/program/arrivals.js";
import { assumed, assumedWith } from "../assumptions.js";

const option = (steps?: ProgramSteps): ProgramOption => ({
  id: steps ? "program" : "none",
  name: "Option",
  ...(steps ? { steps } : {}),
  staff: [],
  equipment: [],
  yearly: [],
  fees: [],
  afterInfestation: { share: 0 },
});

const boatsOf = (classes: ReadonlyArray<readonly [share: number, carriesLive: number]>): Boats => ({
  launches: [0, 0, 1000, 4000, 8000, 11_000, 13_000, 12_000, 8000, 5000, 2000, 157],
  classes: classes.map(([share, carriesLive], index) => ({
    id: `class-${index}`,
    name: `Class ${index}`,
    share,
    carriesLive,
  })),
  otherPathways: 0,
});

// Idaho 2015, state figures in the press: 64,157 inspections, up to 1.29 % of boats from mussel waters in the last 30
// days, about 3 % of those fouled.
const idaho = boatsOf([
  [0.0129, 0.03],
  [0.9871, 0],
]);

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anySteps = fc.record({
  coverage: share,
  setAside: share,
  inspection: share,
  hotWash: share,
  deterrence: share,
});

describe("boats that arrive", () => {
  it("carry live mussels as often as in Idaho: 0.039 % of all, 25 of 64,157", () => {
    // 0.03 x 0.0129 = 0.0387 %; 25/64,157 = 0.039 %.
    const { slipThrough, classes } = arrivals(idaho, option(), assumed);
    const launches = classes.reduce((sum, each) => sum + each.launches, 0);
    expect(launches).toBeCloseTo(64_157, 6);
    expect(slipThrough / launches).toBeCloseTo(0.03 * 0.0129, 10);
    expect(Math.abs(slipThrough - 25)).toBeLessThan(0.5);
  });

  it("are 0.02 to 0.045 % fouled in each Idaho year of 2009 to 2022", () => {
    // State figures in the press: 0.021 % in 2016 to 0.043 % in 2021.
    const { slipThrough } = arrivals(idaho, option(), assumed);
    expect(slipThrough / 64_157).toBeGreaterThan(0.0002);
    expect(slipThrough / 64_157).toBeLessThan(0.00045);
  });

  it("all reach the water where an option has no steps", () => {
    const { classes, slipThrough } = arrivals(idaho, option(), assumed);
    expect(classes.map(({ setAside }) => setAside)).toEqual([0, 0]);
    expect(slipThrough).toBe(classes.reduce((sum, { fouled }) => sum + fouled, 0));
  });
});

const full: ProgramSteps = { coverage: 1, setAside: 1, inspection: 0.79, hotWash: 0.84, deterrence: 0 };

describe("inspection and hot wash", () => {
  // Angell and others 2024: trained inspectors removed 79.2 %, hot-water decontamination 84.4 % of staged organisms.
  it("leave 3.4 % if they miss independently", () => {
    // (1 - 0.79)(1 - 0.84) = 0.0336, under independence only.
    expect(passingShare(full, 0)).toBeCloseTo(0.0336, 12);
    expect(Math.round(passingShare(full, 0) * 1000) / 1000).toBe(0.034);
  });

  it("leave 16 % if the wash misses only what inspection missed as well", () => {
    // 1 - max(0.79, 0.84) = 0.16.
    expect(passingShare(full, 1)).toBeCloseTo(0.16, 12);
  });

  it("leave a share between the two bounds at any dependence, and both bounds are shown", () => {
    fc.assert(
      fc.property(anySteps, share, (steps, dependence) => {
        const found = arrivals(idaho, option(steps), assumedWith({ "steps.dependence": dependence }));
        const { independent, dependent } = found.slipThroughRange;
        expect(independent).toBeLessThanOrEqual(found.slipThrough + 1e-9);
        expect(dependent).toBeGreaterThanOrEqual(found.slipThrough - 1e-9);
        const fouled = found.classes.reduce((sum, each) => sum + each.fouled, 0);
        expect(independent).toBeCloseTo(fouled * passingShare(steps, 0), 8);
        expect(dependent).toBeCloseTo(fouled * passingShare(steps, 1), 8);
      }),
      { seed: 131, numRuns: 200 },
    );
  });
});

describe("a program's steps", () => {
  const slip = (steps: ProgramSteps) => arrivals(idaho, option(steps), assumed).slipThrough;
  const none = arrivals(idaho, option(), assumed).slipThrough;

  it("do nothing where the stations are never open and nobody is deterred", () => {
    expect(slip({ ...full, coverage: 0 })).toBeCloseTo(none, 10);
  });

  it("do nothing where neither inspection nor wash removes anything", () => {
    expect(slip({ ...full, inspection: 0, hotWash: 0 })).toBeCloseTo(none, 10);
    expect(slip({ coverage: 0, setAside: 0, inspection: 0, hotWash: 0, deterrence: 0 })).toBeCloseTo(
      none,
      10,
    );
  });

  it("stop every boat if they all work perfectly, or if everybody is deterred", () => {
    expect(slip({ ...full, inspection: 1 })).toBeCloseTo(0, 12);
    expect(slip({ ...full, deterrence: 1 })).toBe(0);
  });

  it("never let more boats through when one of them is better", () => {
    fc.assert(
      fc.property(
        anySteps,
        fc.constantFrom("coverage", "setAside", "inspection", "hotWash", "deterrence"),
        share,
        (steps, step, betterBy) => {
          const key = step as keyof ProgramSteps;
          const better = { ...steps, [key]: steps[key] + (1 - steps[key]) * betterBy };
          expect(slip(better)).toBeLessThanOrEqual(slip(steps) + 1e-9);
          expect(slip(steps)).toBeLessThanOrEqual(none + 1e-9);
          expect(slip(steps)).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 132, numRuns: 300 },
    );
  });

  it("account for every fouled boat: not set aside, or set aside and missed or stopped", () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        for (const each of arrivals(idaho, option(steps), assumed).classes) {
          expect(each.setAside).toBeLessThanOrEqual(each.fouled + 1e-9);
          expect(each.slipThrough).toBeGreaterThanOrEqual(each.fouled - each.setAside - 1e-9);
          expect(each.fouled).toBeCloseTo(
            each.launches * each.vesselClass.carriesLive * (1 - steps.deterrence),
            9,
          );
        }
      }),
      { seed: 133, numRuns: 100 },
    );
  });
});
