import { describe, expect, it } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { dailyElevations, levelsOfYear } from "../../../src/model/lake/levels.js";
import { deadlyByMonth } from "../../../src/model/mussels/drying.js";
import { groundKills, type Heights } from "../../../src/model/mussels/exposed-band.js";
import { killedByYear } from "../../../src/model/mussels/growth.js";
import { type Surface, settlementParameters, surfaceMonths } from "../../../src/model/mussels/surface.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { exampleDocument } from "../../report/runs.js";
import { assumed, assumptionSet } from "../assumptions.js";
import { contextsOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { growth, stillSurface } from "./growing.js";

/** Falls through autumn and winter to 88 m and rises in spring: dry runs begin and end in many months. */
const lake: Lake = {
  ...productiveLake,
  drawdown: [
    { dayOfYear: 60, elevation: 88 },
    { dayOfYear: 150, elevation: 100 },
    { dayOfYear: 230, elevation: 100 },
  ],
};
const density = Array<number>(72).fill(1);

/** What is killed on this lake, with the elevations at which it was grown. */
function watched(averaged = 1, drawnDown: Lake = lake) {
  const grown: number[] = [];
  const levels = dailyElevations(drawnDown.drawdown);
  const kills = groundKills({
    daily: levels,
    averaged,
    growth,
    monthsOf: (surface: Surface) => {
      if (surface.place.at === "elevation") grown.push(surface.place.elevation);
      return surfaceMonths(surface, drawnDown, levelsOfYear(levels), {
        settlement: settlementParameters(drawnDown, assumed),
        deadly: deadlyByMonth(drawnDown, growth.drying),
      });
    },
  });
  return { between: kills(density, 0), grown };
}

const lastOf = (heights: Heights, { between } = watched()) => between(heights).killed.at(-1) ?? Number.NaN;

describe("what drying kills between two elevations", () => {
  it("adds up: a stretch and the next one are the whole, and beyond the band there is nothing", () => {
    const band = watched();
    const whole = lastOf({ from: 88, to: 100 }, band);
    expect(lastOf({ from: 88, to: 93.7 }, band) + lastOf({ from: 93.7, to: 100 }, band)).toBeCloseTo(
      whole,
      9,
    );
    expect(lastOf({ from: 70, to: 140 }, band)).toBeCloseTo(whole, 12);
    const heightOf = (from: number, to: number) => band.between({ from, to }).height.at(-1) ?? Number.NaN;
    // Of a band of 12 m the top is dry too briefly to kill.
    expect(heightOf(88, 93.7)).toBeCloseTo(5.7, 9);
    expect(heightOf(88, 93.7) + heightOf(93.7, 100)).toBeCloseTo(heightOf(70, 140), 9);
    expect(heightOf(70, 140)).toBeLessThanOrEqual(12);
    for (const beyond of [
      { from: 70, to: 88 },
      { from: 100, to: 120 },
    ]) {
      expect(band.between(beyond).killed).toEqual(Array(6).fill(0));
      expect(band.between(beyond).height).toEqual(Array(6).fill(0));
    }
  });

  it("is zero, on zero height, in a winter before any mussels, by hand", () => {
    // Lowered by 10 m from New Year's Day: nothing has settled in the first year, and in the second all 10 m are exposed.
    const { killed, height } = watched(1, drawnDownLake).between({ from: 70, to: 140 });
    expect([killed[0], height[0]]).toEqual([0, 0]);
    expect(height[1]).toBeCloseTo(10, 9);
    expect(killed[1]).toBeGreaterThan(0);
  });

  it("is near the sum of 600 strips", () => {
    // Two routes; a hundredth is what a reader may tell apart.
    const strips = Array.from({ length: 600 }, (_, strip) => 88 + (12 * (strip + 1 / 2)) / 600);
    const fine = strips.reduce((sum, elevation) => {
      const surface = stillSurface({ at: "elevation", elevation }, lake);
      return sum + ((killedByYear({ surface, density, settled: 0 }, growth).at(-1) ?? Number.NaN) * 12) / 600;
    }, 0);
    expect(relativeGap(lastOf({ from: 88, to: 100 }), fine)).toBeLessThan(0.01);
  });

  it("is grown once at each elevation, however many stretches ask for it", () => {
    const band = watched();
    band.between({ from: 90, to: 97 });
    band.between({ from: 91, to: 99 });
    const { length } = band.grown;
    band.between({ from: 92, to: 96 });
    expect(band.grown).toHaveLength(length);
    expect(new Set(band.grown).size).toBe(length);
  });

  it("is coarser in each year of a record, and by no more than a reader could tell", () => {
    const one = watched();
    const ofSix = watched(6);
    const whole = { from: 88, to: 100 };
    expect(relativeGap(lastOf(whole, ofSix), lastOf(whole, one))).toBeLessThan(0.01);
    expect(ofSix.grown.length).toBeLessThan(one.grown.length);
  });
});

describe("ramps of the example", () => {
  const { input } = prepareStudy(exampleDocument("sorrel-bend"), assumptionSet);
  const ramps = input.structures.flatMap((each) => (each.kind === "ramp" ? [each] : []));
  const schedules = [input.lake, ...input.lake.otherSchedules.map((each) => ({ ...input.lake, ...each }))];

  it.each(ramps.flatMap((ramp) => schedules.map((each, index) => [ramp.id, index, ramp, each] as const)))(
    "lose to no other fineness: %s under schedule %d",
    (_id, _index, { bottomElevation, topElevation }, scheduled) => {
      const [context] = contextsOf(scheduled, 20);
      const heights = { from: bottomElevation, to: topElevation };
      const shown = context.killedBetween(heights).killed.at(-1) ?? Number.NaN;
      const fine = 400;
      const low = Math.max(bottomElevation, Math.min(...context.daily));
      const high = Math.min(topElevation, Math.max(...context.daily));
      const strips = Array.from(
        { length: fine },
        (_, strip) => low + ((high - low) * (strip + 1 / 2)) / fine,
      );
      const killed = strips.map((elevation) => {
        const surface = context.growing({ place: { at: "elevation", elevation }, velocity: everyMonth(0) });
        const years = killedByYear(
          { surface, density: context.density, settled: context.settledMonth },
          context.growth,
        );
        return years.at(-1) ?? Number.NaN;
      });
      const expected = (killed.reduce((sum, each) => sum + each, 0) * (high - low)) / fine;
      expect(relativeGap(shown, expected)).toBeLessThan(0.01);
    },
  );
});
