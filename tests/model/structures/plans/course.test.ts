import { describe, expect, it } from "vitest";
import type { Lake } from "../../../../src/model/lake/lake.js";
import type { Layer } from "../../../../src/model/mussels/layer.js";
import type { Dock } from "../../../../src/model/structures/kinds/dock.js";
import { candidatePlans } from "../../../../src/model/structures/plan.js";
import { courseOf, nearLimit } from "../../../../src/model/structures/plans/course.js";
import {
  firstCleaned,
  isCleaned,
  layerIn,
  monthLike,
  thicknessIn,
  yearLike,
} from "../../../../src/model/structures/plans/course-months.js";
import { planTools } from "../../../../src/model/structures/plans/tools.js";
import { untouchedCourse, untouchedLayer } from "../../../../src/model/structures/plans/untouched.js";
import { componentsOf } from "../../../../src/model/structures/structure.js";
import { assumedWith, idsOfPlanBy } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake, productiveLake } from "../../lakes.js";
import { growLayers } from "../../mussels/growing.js";
import { fixedDock, floatingDock, gravityIntake } from "../../study.js";

const rackOf = (clearSpacing: number) => ({
  ...gravityIntake,
  rack: { ...gravityIntake.rack, clearSpacing },
});
const closeRack = rackOf(0.03);

function rackIn(startDensity: number, { years = 24, rack = closeRack } = {}) {
  const context = contextOf(productiveLake, years, assumedWith({ "protection.start-density": startDensity }));
  const component = componentsOf(rack, context).find(({ kind }) => kind === "rack");
  if (!component) throw new Error("no rack");
  const tools = planTools({ component, context, surface: context.growing(component.surface) });
  const plan = candidatePlans(component, context).plans.find(({ id }) => id === "trigger");
  if (!plan) throw new Error("no plan");
  const untouched = tools.untouched(1);
  return { context, component, untouched, course: courseOf(plan, untouched, tools) };
}

describe("inspections with cleaning when a limit is near", () => {
  it("clean in each month in which mussels are found and the layer is near its limit, and in no other", () => {
    const { context, component, course } = rackIn(0.3);
    const limitShare = idsOfPlanBy("trigger").limitShare;
    const isNear = nearLimit({ by: "trigger", limitShare }, component, context);
    expect(course.cleaned.length).toBeGreaterThan(2);
    for (let month = 0; month < course.months; month++) {
      const layer = layerIn(course, month);
      const isDue = context.found.isFound(month) && isNear(layer, month % 12);
      expect(isCleaned(course, month), `month ${month}`).toBe(isDue);
    }
    expect(context.found.isFound(0)).toBe(false);
  });

  it.each([
    ["every year", closeRack, 1],
    ["in other months of the year, until five years on", rackOf(0.1), 5],
  ])("are told by the years that repeat as by growing them all: %s", (_when, rack, cycle) => {
    const { context, component, course } = rackIn(0.3, { rack });
    const isNear = nearLimit(
      { by: "trigger", limitShare: idsOfPlanBy("trigger").limitShare },
      component,
      context,
    );
    const cleaned: number[] = [];
    const cleanAfter = (month: number, layer: Layer) => {
      const isDue = context.found.isFound(month) && isNear(layer, month % 12);
      if (isDue) cleaned.push(month);
      return isDue;
    };
    const surface = context.growing(component.surface);
    const plainly = growLayers({ surface, density: context.density, cleanAfter }, context.growth);
    const months = context.density.map((_, month) => month);
    expect(months.filter((month) => isCleaned(course, monthLike(course, month)))).toEqual(cleaned);
    expect(firstCleaned(course)).toBe(cleaned[0]);
    expect(months.map((month) => layerIn(course, monthLike(course, month)).mass)).toEqual(
      plainly.map(({ mass }) => mass),
    );
    // Up to the year of the first cleaning in the month of the year of another, once the lake has settled.
    const settled = cleaned.filter((month) => month >= context.settledMonth);
    const repeated = settled.find((month) => settled.includes(month - 12 * cycle)) ?? Number.NaN;
    expect(course).toMatchObject({ months: 12 * Math.floor(repeated / 12) + 12, cycle });
    // A horizon that ends with that year is told to its end.
    const { course: whole } = rackIn(0.3, { rack, years: course.months / 12 });
    expect(whole).toMatchObject({ months: course.months, cycle: 0, cleaned: course.cleaned });
  });

  it("touch nothing in a lake in which mussels are never regularly found", () => {
    const { course, untouched } = rackIn(2);
    expect(course).toBe(untouched);
  });
});

describe("a surface cleaned on dates", () => {
  it("grows from bare after each as month by month, whatever the dates", () => {
    const context = contextOf(productiveLake, 12);
    const [component] = componentsOf(closeRack, context);
    if (!component) throw new Error("no rack");
    const surface = context.growing(component.surface);
    const tools = planTools({ component, context, surface });
    const { plans } = candidatePlans(component, context);
    const dated = plans.filter(({ routine, protection }) => routine.by === "interval" && !protection);
    expect(dated.length).toBeGreaterThan(1);
    for (const plan of dated) {
      const course = courseOf(plan, tools.untouched(1), tools);
      const { months } = course;
      const cleanAfter = (month: number) => isCleaned(course, month);
      const plainly = growLayers({ surface, density: context.density, cleanAfter }, context.growth);
      expect(firstCleaned(course)).toBeLessThan(months);
      plainly.slice(0, months).forEach(({ mass }, month) => {
        expect(layerIn(course, month).mass, `month ${month}`).toBe(mass);
        expect(thicknessIn(course, month)).toBe(layerIn(course, month).thickness);
      });
    }
  });
});

describe("dates of which none meets a layer worth a visit", () => {
  it("leave the surface as it is: before the first layer that is, and where there are no dates at all", () => {
    const barely = assumedWith({ "cleaning.smallest-layer": 1e6 });
    const context = contextOf(productiveLake, 12, barely);
    const [component] = componentsOf(fixedDock, context);
    if (!component) throw new Error("no piles");
    const tools = planTools({ component, context, surface: context.growing(component.surface) });
    const untouched = tools.untouched(1);
    expect([untouched.firstWorth, firstCleaned(untouched)]).toEqual([-1, Infinity]);
    const { plans } = candidatePlans(component, context);
    const ids = plans.filter(({ routine }) => routine.by !== "trigger").map(({ routine }) => routine.by);
    expect(new Set(ids)).toEqual(new Set(["nothing", "interval"]));
    for (const plan of plans) {
      if (plan.routine.by !== "trigger") expect(courseOf(plan, untouched, tools)).toBe(untouched);
    }
  });
});

describe("a surface that nobody touches", () => {
  it.each([
    ["never exposed", 85, 12],
    ["exposed each winter", 95, 12],
    ["exposed each winter, over two years alone", 95, 2],
    ["exposed each winter, where the density settles in the last year but one", 95, 9],
    ["exposed each winter, where it settles in the one before", 95, 10],
    ["exposed each winter, where it settles two before", 95, 11],
  ])("is told by the years that repeat as by growing them all: %s", (_what, elevation, years) => {
    const context = contextOf(drawnDownLake, years, assumedWith({ "population.peak-share": 0.9 }));
    const [component] = componentsOf({ ...fixedDock, elevation }, context);
    if (!component) throw new Error("no hull");
    const surface = context.growing(component.surface);
    const course = untouchedCourse(1, { component, context, surface });
    const plainly = growLayers({ surface, density: context.density }, context.growth);
    const told = context.density.map(
      (_, month) => layerIn(course, yearLike(course, Math.floor(month / 12)) * 12 + (month % 12)).mass,
    );
    expect(told).toEqual(plainly.map(({ mass }) => mass));
    expect(course.months).toBeLessThanOrEqual(12 * years);
    const smallest = context.assumed("cleaning.smallest-layer");
    expect(course.firstWorth).toBe(plainly.findIndex(({ thickness }) => thickness >= smallest));
  });
});

describe("the thickest layer of a surface that nobody touches in a mature infestation", () => {
  it.each([
    ["never exposed", 85],
    ["exposed each winter", 95],
  ])("is that of growing all years after a run-up of three: %s", (_what, elevation) => {
    const context = contextOf(drawnDownLake, 25, assumedWith({ "population.peak-share": 0.9 }));
    const [component] = componentsOf({ ...fixedDock, elevation }, context);
    if (!component) throw new Error("no hull");
    const surface = context.growing(component.surface);
    const plainly = growLayers({ surface, density: context.density }, context.growth);
    const mature = plainly.slice(context.settledMonth + 36).map(({ thickness }) => thickness);
    expect(untouchedLayer({ component, context }).thickness).toBeCloseTo(Math.max(...mature), 12);
    expect(Math.max(...mature)).toBeGreaterThan(0);
  });

  /** The layer told of, and the thickest of each of ten years at the greatest density. */
  function matureOf(dock: Dock, lake: Lake, { years = 12, later = 1 } = {}) {
    const source = assumedWith({ "population.peak-share": 0.9, "population.later-over-peak": later });
    const context = contextOf(lake, years, source);
    const [component] = componentsOf(dock, context);
    if (!component) throw new Error("no hull");
    const surface = context.growing(component.surface);
    const density = Array<number>(120).fill(context.matureDensity);
    const grown = growLayers({ surface, density }, context.growth).map(({ thickness }) => thickness);
    const byYear = Array.from({ length: 10 }, (_, year) =>
      Math.max(...grown.slice(12 * year, 12 * year + 12)),
    );
    return { told: untouchedLayer({ component, context }).thickness, byYear };
  }

  it.each([
    ["where the horizon is too short for it", 12, 1],
    ["where the lake was denser before", 25, 0.5],
    ["where both are so", 12, 0.5],
  ])("is that of the last seven of ten years at the greatest density: %s", (_what, years, later) => {
    const { told, byYear } = matureOf(floatingDock, productiveLake, { years, later });
    expect(told).toBe(Math.max(...byYear.slice(3)));
    // The third year's is thicker: a run-up of two would be too short.
    expect(byYear[2]).toBeGreaterThan(told);
  });

  it("is the tenth year's in water so cold that the layer still thickens", () => {
    const deepTemperature = productiveLake.deepTemperature.map((celsius) => celsius - 5);
    const cold: Lake = { ...productiveLake, species: "zebra", deepTemperature };
    const { told, byYear } = matureOf({ ...fixedDock, elevation: 75 }, cold);
    expect(told).toBe(byYear[9]);
    expect(told).toBeGreaterThan(Math.max(...byYear.slice(0, 9)));
  });
});
