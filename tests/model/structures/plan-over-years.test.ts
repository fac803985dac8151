import { describe, expect, it } from "vitest";
import { growLayers } from "../../../src/model/mussels/growth.js";
import type { Layer } from "../../../src/model/mussels/layer.js";
import type { AssumptionId } from "../../../src/model/register/register.js";
import type { Component, Plan, Priced } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import { nearLimit } from "../../../src/model/structures/growth-between-visits.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { forcedCleaning } from "../../../src/model/structures/limits.js";
import { candidatePlans } from "../../../src/model/structures/plan.js";
import { followPlan } from "../../../src/model/structures/plan-over-years.js";
import { removalLines, shellLines, workLines } from "../../../src/model/structures/plan-work.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { fixedDock, floatingDock, gravityIntake, plant } from "../study.js";

const years = 24;

const loweredBetween = (first: number, last: number) => ({
  ...productiveLake,
  drawdown: [
    { dayOfYear: 0, elevation: 100 },
    { dayOfYear: first - 1, elevation: 100 },
    { dayOfYear: first, elevation: 90 },
    { dayOfYear: last, elevation: 90 },
    { dayOfYear: last + 1, elevation: 100 },
  ],
});

/** Nine mild days in April: long enough to kill some mussels, not all. */
const brieflyLowered = loweredBetween(96, 104);

/** So that work in the dry comes in the same year after the lake has settled as an oxidant at the season's end. */
const loweredInAutumn = loweredBetween(244, 304);

/**
 * The plain route: every month since establishment one after another, nothing remembered and no year taken for
 * another. Work begins at the first date that finds a layer worth a visit; a protection is there once mussels are
 * regularly found or work has begun, and holds off settlers from when they are found.
 */
function followPlainly(plan: Plan, component: Component, context: LakeContext) {
  const { routine, protection } = plan;
  const isFound = context.density.map((share) => share >= assumedIn(context, "protection.start-density"));
  const isNear = routine.by === "trigger" ? nearLimit(routine, component, context) : () => false;
  const isDate = (month: number) => {
    if (routine.by === "interval") return (month + 1) % routine.months === 0;
    return routine.by === "month-of-year" && month % 12 === routine.month;
  };
  const visits: number[] = [];
  const cleanAfter = (month: number, layer: Layer) => {
    const begun = visits.length > 0 || layer.thickness >= assumedIn(context, "cleaning.smallest-layer");
    const isVisited = isNear(layer, month % 12) || (isDate(month) && begun);
    if (isVisited) visits.push(month);
    return isVisited;
  };
  const density = context.density.map((share, month) =>
    isFound[month] && protection ? protection.settlementFactor * share : share,
  );
  const surface = context.growing(component.surface);
  const layers = growLayers({ surface, density, cleanAfter }, context.growth);
  const forced = forcedCleaning(component, context);
  const costs = layers.map((layer, month) => {
    const monthOfYear = month % 12;
    const isProtected = protection && (isFound[month] || visits.some((visit) => visit <= month));
    const lines = [
      ...component.losses(layer, monthOfYear),
      ...(layer.mass > 0 ? forced.lines(component.limit(layer, monthOfYear), monthOfYear) : []),
      ...shellLines(layer, component, context),
      ...(isProtected ? (protection.monthly[monthOfYear] ?? []) : []),
    ];
    if (visits.includes(month)) {
      lines.push(...workLines(plan.entry, component, context, monthOfYear));
      lines.push(...removalLines(plan, layer, component, context));
    }
    return costOf(lines);
  });
  const ofYear = <Value>(values: readonly Value[], year: number) => values.slice(12 * year, 12 * year + 12);
  return {
    visits: visits.length,
    costs: Array.from({ length: years }, (_, year) =>
      ofYear(costs, year).reduce((sum, cost) => sum + cost, 0),
    ),
    thickest: Array.from({ length: years }, (_, year) =>
      Math.max(...ofYear(layers, year).map(({ thickness }) => thickness)),
    ),
  };
}

const costOf = (lines: readonly Priced[]) =>
  lines.reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);

const assumedIn = ({ assumed }: LakeContext, id: AssumptionId) => assumed(id);

const closeRack: Structure = { ...gravityIntake, rack: { ...gravityIntake.rack, clearSpacing: 0.03 } };
const soonProtected = assumedWith({ "protection.start-density": 0 });
const lateProtected = assumedWith({ "protection.start-density": 0.6 });

/** Mussels as dense from the first month on as they ever are. */
const denseAtOnce = assumedWith({ "population.initial-share": 0.99999, "population.peak-share": 0.999999 });

const dosedIntake: Structure = { ...gravityIntake, elevation: 95, oxidantAllowed: true };
const inOneLake = contextOf(drawnDownLake, years);

const cases: ReadonlyArray<[string, Structure, LakeContext]> = [
  ["an intake whose bars stand close", closeRack, inOneLake],
  ["one beside it, alike but for the bars", gravityIntake, inOneLake],
  ["an intake that falls dry and may be dosed", dosedIntake, contextOf(loweredInAutumn, years)],
  ["a power plant", plant, contextOf(drawnDownLake, years)],
  ["a floating dock", floatingDock, contextOf(drawnDownLake, years)],
  ["a pier that each winter kills bare", { ...fixedDock, elevation: 95 }, contextOf(drawnDownLake, years)],
  ["a pier that dries briefly", { ...fixedDock, elevation: 95 }, contextOf(brieflyLowered, years)],
  [
    "a pier that dries briefly in a lake full of mussels at once",
    { ...fixedDock, elevation: 95 },
    contextOf(brieflyLowered, years, denseAtOnce),
  ],
  ["a dock protected at once", floatingDock, contextOf(drawnDownLake, years, soonProtected)],
  [
    "an intake cleaned before mussels are found",
    gravityIntake,
    contextOf(drawnDownLake, years, lateProtected),
  ],
];

describe("following a plan since establishment", () => {
  it.each(cases)("costs and grows what each month in turn does: %s", (_, structure, context) => {
    let visits = 0;
    for (const component of componentsOf(structure, context)) {
      for (const plan of candidatePlans(component, context).plans) {
        const surface = context.growing(component.surface);
        const followed = followPlan(plan, { component, context, surface });
        const plainly = followPlainly(plan, component, context);
        visits += plainly.visits;
        followed.years.forEach((lines, year) => {
          const expected = plainly.costs[year] ?? Number.NaN;
          const where = `${component.name}, ${plan.id}, year ${year}`;
          expect(Math.abs(costOf(lines) - expected), where).toBeLessThanOrEqual(1e-9 * expected);
        });
        followed.thickestByYear.forEach(({ thickness }, year) => {
          expect(thickness).toBeCloseTo(plainly.thickest[year] ?? Number.NaN, 12);
        });
      }
    }
    expect(visits).toBeGreaterThan(0);
  });

  it("leaves some alive where the surface dries briefly, and none where the winter kills it bare", () => {
    const [bare, some] = [drawnDownLake, brieflyLowered].map((lake) => {
      const context = contextOf(lake, years);
      const [pier] = componentsOf({ ...fixedDock, elevation: 95 }, context);
      if (!pier) throw new Error("no pier");
      const surface = context.growing(pier.surface);
      const layers = growLayers({ surface, density: context.density }, context.growth);
      return layers.slice(-12).map(({ number, killed }) => ({ number, killed }));
    });
    expect(bare?.some(({ number }) => number === 0)).toBe(true);
    expect(some?.some(({ killed }) => killed > 0)).toBe(true);
    expect(some?.every(({ number }) => number > 0)).toBe(true);
  });
});
