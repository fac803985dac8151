import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import type { Boats, ProgramOption } from "../../src/model/inputs.js";
import { assumed, assumedWith } from "./assumptions.js";
import { anySteps, share, thoroughSteps } from "./steps.js";
import { boats, duties, noProgram, ownWayAlone, program, studyOf } from "./study.js";

const rate = (chance: number) => -Math.log1p(-chance);
const several: Boats = {
  ...boats,
  classes: [
    { id: "near", name: "Near", share: 0.1, fouled: 0.02, daysSince: 1 },
    { id: "between", name: "Between", share: 0.3, fouled: 0.01, daysSince: 5, living: 0.1 },
    { id: "unknown", name: "Unknown", share: 0.6, fouled: 0.002 },
  ],
};

function chances(changes: Partial<Boats>, option: ProgramOption = program, source = assumed) {
  const input = studyOf([duties], { boats: { ...several, ...changes }, options: [noProgram, option] });
  const { baseline, options } = compare(input, source);
  const [balance] = options;
  if (!balance) throw new Error("no program");
  return { without: baseline.hazard, withIt: balance.result.hazard };
}

const weighing = (weightOfBoats: number): Boats["comparable"] => ({ ...ownWayAlone, weightOfBoats });
const perfect = { ...program, steps: { ...thoroughSteps, inspection: 1, hotWash: 1 } };
const weight = fc.double({ min: 0, max: 1, noNaN: true });

describe("the yearly chance of a study", () => {
  it("doubles −ln(1 − h) with twice the launches where each acts alone and boats drive the answer", () => {
    const source = assumedWith({ "arrival.shape": 1 });
    const twice = several.launches.map((each) => 2 * each);
    const once = chances({ otherWays: [] }, program, source);
    const more = chances({ otherWays: [], launches: twice }, program, source);
    expect(rate(more.without) / rate(once.without)).toBeCloseTo(2, 12);
    expect(rate(more.withIt) / rate(once.withIt)).toBeCloseTo(2, 12);
  });

  it("is that of the other ways where a program meets all boats, finds all and cleans all", () => {
    // By hand: boats bring nothing, and of a checked way nothing gets through.
    const otherWays = [
      { name: "Canal", chance: 0.004, checked: false },
      { name: "Work craft", chance: 0.02, checked: true },
    ];
    for (const weightOfBoats of [0, 0.4, 1]) {
      const { withIt } = chances({ otherWays, comparable: weighing(weightOfBoats) }, perfect);
      expect(withIt).toBeCloseTo(0.004, 14);
    }
  });

  it("falls by a program at most to the typical share of other ways, where none is named", () => {
    const { without, withIt } = chances({ otherWays: undefined, comparable: weighing(0.4) }, perfect);
    expect(rate(withIt) / rate(without)).toBeCloseTo(assumed("arrival.other-share"), 12);
  });

  it("is a number where another way is certain, checked or not", () => {
    for (const checked of [false, true]) {
      const otherWays = [{ name: "Canal", chance: 1, checked }];
      expect(chances({ otherWays }).without).toBe(1);
      expect(chances({ otherWays }, perfect).withIt).toBe(checked ? 0 : 1);
    }
  });

  it("is in each year that of the ways whose source is infested by then", () => {
    const otherWays = [{ name: "Canal", chance: 0.5, checked: false, fromYear: 3 }];
    const clean = { ...several, classes: several.classes.map((each) => ({ ...each, fouled: 0 })), otherWays };
    const { baseline } = compare(studyOf([duties], { boats: clean }), assumed);
    // By hand: none in years 1 to 3, then 1 − 1/2^n.
    expect(baseline.infestedByYear.slice(0, 6).map((each) => Number(each.toFixed(12)))).toEqual([
      0, 0, 0, 0.5, 0.75, 0.875,
    ]);
  });

  it("never falls with more fouled launches, a larger α or weaker checks", () => {
    const rising = ["arrival.founding-unknown", "arrival.founding-near", "arrival.founding-far"] as const;
    const shapes = fc.constantFrom(1, 1.5);
    fc.assert(
      fc.property(anySteps, weight, share, shapes, (steps, weightOfBoats, part, shape) => {
        const option = { ...program, steps };
        const fixed = { "arrival.shape": shape };
        const of = (changes: Partial<Boats>, each = option, replaced = {}) =>
          chances(
            { comparable: weighing(weightOfBoats), ...changes },
            each,
            assumedWith({ ...fixed, ...replaced }),
          );
        const before = of({});
        const more = several.classes.map((each) => ({ ...each, fouled: each.fouled * (1 + part) }));
        const larger = Object.fromEntries(rising.map((id) => [id, assumed(id) * (1 + part)]));
        const weaker = { ...option, steps: { ...steps, coverage: steps.coverage * part } };
        for (const after of [of({ classes: more }), of({}, option, larger), of({}, weaker)]) {
          expect(after.without).toBeGreaterThanOrEqual(before.without - 1e-12);
          expect(after.withIt).toBeGreaterThanOrEqual(before.withIt - 1e-12);
        }
      }),
      { seed: 531, numRuns: 60 },
    );
  });
});
