import { describe, expect, it } from "vitest";
import type { Priced } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { candidatePlans } from "../../../src/model/structures/plan.js";
import { followPlan, meanOfYears } from "../../../src/model/structures/plan-over-years.js";
import { courseOf } from "../../../src/model/structures/plans/course.js";
import { yearLike } from "../../../src/model/structures/plans/course-months.js";
import { planTools } from "../../../src/model/structures/plans/tools.js";
import { settlersLetOn, thickest } from "../../../src/model/structures/plans/untouched.js";
import { linesByYear, tableOf } from "../../../src/model/structures/plans/year-table.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { growLayers } from "../mussels/growing.js";
import { fixedDock, floatingDock, gravityIntake, plant } from "../study.js";
import { costOf, followPlainly } from "./followed-plainly.js";

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
        const tools = planTools({ component, context, surface });
        const course = courseOf(plan, tools.untouched(settlersLetOn(plan, context)), tools);
        const followed = linesByYear(followPlan(plan, tools, course));
        const plainly = followPlainly(plan, component, context);
        visits += plainly.visits;
        followed.forEach((lines, year) => {
          const expected = plainly.costs[year] ?? Number.NaN;
          const where = `${component.name}, ${plan.id}, year ${year}`;
          expect(Math.abs(costOf(lines) - expected), where).toBeLessThanOrEqual(1e-9 * expected);
        });
        plainly.thickest.forEach((expected, year) => {
          const from = yearLike(course, year) * 12;
          expect(thickest(course, from, from + 12).thickness).toBeCloseTo(expected, 12);
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

describe("the mean over a record", () => {
  const line = (quantity: number): Priced => ({
    what: "work",
    type: "work",
    quantity,
    quantityKind: "hours",
    unitRate: 1,
    assumptionIds: [],
  });
  const [few, many] = [[line(2)], [line(6)]];

  it("has one list for years that are alike in each of its years", () => {
    const mean = meanOfYears([tableOf([few, many, few, many, few]), tableOf([few, few, few, many, few])]);
    expect(mean.lists).toEqual([0, 1, 0, 2, 0]);
    // By hand: (2 + 2)/2, (6 + 2)/2, (6 + 6)/2.
    expect(mean.quantities).toEqual([2, 4, 6]);
  });
});
