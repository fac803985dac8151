import { describe, expect, it } from "vitest";
import { settledMonth } from "../../../../src/model/mussels/population.js";
import { layerIn, monthLike, yearLike } from "../../../../src/model/structures/plans/course-months.js";
import {
  densityUnder,
  isThickIn,
  untouchedCourse,
} from "../../../../src/model/structures/plans/untouched.js";
import { componentsOf } from "../../../../src/model/structures/structure.js";
import { assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake } from "../../lakes.js";
import { growLayers } from "../../mussels/growing.js";
import { everyMonth } from "../../near.js";
import { fixedDock } from "../../study.js";

/** The piles of a pier, in water that is as dense from a month of the eighth year on as it ever is. */
function pilesIn(
  years: number,
  { elevation = 95, peakShare = 0.9, velocity = 0, lake = drawnDownLake } = {},
) {
  const source = assumedWith({
    "population.initial-share": 0.003,
    "population.years-to-peak.quagga-shallow": 4,
    "population.later-over-peak": 1,
    "population.peak-share": peakShare,
    "protection.start-density": 0.5,
  });
  const context = contextOf(lake, years, source);
  const [made] = componentsOf({ ...fixedDock, elevation }, context);
  if (!made) throw new Error("no piles");
  const component = { ...made, surface: { ...made.surface, velocity: everyMonth(velocity) } };
  return { component, context, surface: context.growing(component.surface) };
}

describe("the years that are told of a surface that nobody touches, by hand", () => {
  // Logistic from 0.003 (logit -5.806) to 0.9 (2.197) in 4 years: 2.001 a year. Within a ten-thousandth of full density
  // (9.210) it counts as settled: 15.016/2.001 = 7.505 years, 90.06 months, is past in the middle of July of the eighth
  // year (month 90). The next January that leaves it bare is that of the ninth (96), which grows as all later ones do,
  // and is told in full from the tenth year on.
  it.each([
    ["all where it is never exposed", 12, 85, 144, 0],
    ["up to the first that repeats, where each winter leaves it bare", 12, 95, 120, 1],
    ["the same, of a horizon of one year more", 11, 95, 120, 1],
    ["all of a horizon that ends with it", 10, 95, 120, 0],
    ["all of a shorter horizon", 9, 95, 108, 0],
  ])("are %s", (_what, years, elevation, months, cycle) => {
    const part = pilesIn(years, { elevation });
    expect(part.context.settledMonth).toBe(90);
    expect(untouchedCourse(1, part)).toMatchObject({ months, cycle });
  });

  it("are all where each winter leaves some", () => {
    // In damp air above freezing.
    const lake = { ...drawnDownLake, airTemperature: everyMonth(2), humidity: everyMonth(0.95) };
    const course = untouchedCourse(1, pilesIn(12, { elevation: 90.2, lake }));
    expect(course).toMatchObject({ months: 144, cycle: 0 });
    expect(layerIn(course, 97).killed).toBeGreaterThan(0);
    expect(layerIn(course, 97).number).toBeGreaterThan(0);
  });

  it("are known once the first January of a settled lake has left it bare, or at once where it is never exposed", () => {
    expect(untouchedCourse(1, pilesIn(12)).grown.count).toBe(97);
    const { grown, firstWorth } = untouchedCourse(1, pilesIn(12, { elevation: 85 }));
    // No further than to the first layer worth a visit.
    expect(grown.count).toBe(firstWorth + 1);
  });

  it("are fewer where the last is like the one before to the last digit", () => {
    // To 0.93 (logit 2.587) in 4 years: 2.098 a year; 15.016/2.098 = 7.157 years, 85.9 months. Settled in March of the
    // eighth year (86): larvae settle from April on, so that it grows as the ninth and tenth do.
    const part = pilesIn(10, { peakShare: 0.93 });
    expect(part.context.settledMonth).toBe(86);
    expect(untouchedCourse(1, part)).toMatchObject({ months: 108, cycle: 1 });
  });

  it("are those until the lake has settled, and one more, where nothing settles", () => {
    // Faster than mussels settle at (1.8 m/s): years 1 to 8, and the ninth stands for all others.
    expect(untouchedCourse(1, pilesIn(12, { velocity: 2, elevation: 85 }))).toMatchObject({
      months: 108,
      cycle: 1,
    });
    expect(untouchedCourse(1, pilesIn(9, { velocity: 2, elevation: 85 }))).toMatchObject({
      months: 108,
      cycle: 0,
    });
    expect(untouchedCourse(1, pilesIn(5, { velocity: 2, elevation: 85 }))).toMatchObject({
      months: 60,
      cycle: 0,
    });
  });

  it("are one of a lake in which nothing lives", () => {
    const part = pilesIn(12, { elevation: 85 });
    const density = Array<number>(144).fill(0);
    const context = { ...part.context, density, matureDensity: 0, settledMonth: settledMonth(density) };
    expect(untouchedCourse(1, { ...part, context })).toMatchObject({ months: 12, cycle: 1, firstWorth: -1 });
  });

  it("are grown once for all that ask", () => {
    const part = pilesIn(12);
    expect(untouchedCourse(1, part).grown).toBe(untouchedCourse(1, part).grown);
    expect(untouchedCourse(0.5, part).grown).not.toBe(untouchedCourse(1, part).grown);
  });
});

describe("the month or year of a course that another is like, by hand", () => {
  const course = { ...untouchedCourse(1, pilesIn(5)), months: 60, cycle: 3 };

  it("is itself as far as they are told, and then comes again and again", () => {
    expect([0, 3, 4, 5, 6, 7, 8].map((year) => yearLike(course, year))).toEqual([0, 3, 4, 2, 3, 4, 2]);
    expect([0, 59, 60, 71, 72, 83, 96].map((month) => monthLike(course, month))).toEqual([
      0, 59, 24, 35, 36, 47, 24,
    ]);
  });
});

describe("a protection's share of settlers", () => {
  it("thins them out in the months in which mussels are regularly found, by hand", () => {
    const { context } = pilesIn(12);
    const found = context.density.findIndex((share) => share >= 0.5);
    const thinned = densityUnder(0.25, context);
    expect(found).toBeGreaterThan(12);
    expect(thinned.slice(0, found)).toEqual(context.density.slice(0, found));
    expect(thinned.slice(found)).toEqual(context.density.slice(found).map((share) => share / 4));
    expect(densityUnder(1, context)).toBe(context.density);
  });
});

describe("a year in which a layer reaches a thickness", () => {
  it("is one of whose months any does, also where it stands for later ones", () => {
    const part = pilesIn(12);
    const course = untouchedCourse(1, part);
    const plainly = growLayers({ surface: part.surface, density: part.context.density }, part.context.growth);
    const thickest = Array.from({ length: 12 }, (_, year) =>
      Math.max(...plainly.slice(12 * year, 12 * year + 12).map(({ thickness }) => thickness)),
    );
    for (const [year, most] of thickest.entries()) {
      expect(isThickIn(course, year, most)).toBe(true);
      expect(isThickIn(course, year, most * (1 + 1e-9))).toBe(false);
    }
    expect(thickest[0]).toBeLessThan(thickest[11] ?? Number.NaN);
  });
});
