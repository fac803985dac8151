import { describe, expect, it } from "vitest";
import type { Component, Plan } from "../../../../src/model/structures/component.js";
import type { Structure } from "../../../../src/model/structures/kinds.js";
import { candidatePlans } from "../../../../src/model/structures/plan.js";
import { followPlan } from "../../../../src/model/structures/plan-over-years.js";
import { areAmong } from "../../../../src/model/structures/plans/dates.js";
import { planTools } from "../../../../src/model/structures/plans/tools.js";
import { planValues } from "../../../../src/model/structures/plans/value.js";
import { costOfLines, weighed } from "../../../../src/model/structures/plans/weights.js";
import { linesByYear } from "../../../../src/model/structures/plans/year-table.js";
import { componentsOf } from "../../../../src/model/structures/structure.js";
import { assumedWith } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { drawnDownLake } from "../../lakes.js";
import { growLayers } from "../../mussels/growing.js";
import { fixedDock, floatingDock, gravityIntake } from "../../study.js";

/** Mussels are regularly found years after work begins, so that protections are used before. */
const lateProtected = assumedWith({ "protection.start-density": 0.6 });
const dosed = { ...gravityIntake, elevation: 95, oxidantAllowed: true };

describe("the value of a plan", () => {
  it.each<[string, Structure, number]>([
    ["a floating dock", floatingDock, 16],
    ["a pier that each winter kills bare", { ...fixedDock, elevation: 95 }, 16],
    ["an intake that may be dosed", dosed, 16],
    ["an intake over two years", dosed, 2],
  ])("is what its lines come to by their weights: %s", (_what, structure, years) => {
    const context = contextOf(drawnDownLake, years, lateProtected);
    const { planWeights } = context;
    for (const component of componentsOf(structure, context)) {
      const tools = planTools({ component, context, surface: context.growing(component.surface) });
      for (const plan of candidatePlans(component, context).plans) {
        const value = planValues(tools)(plan);
        while (!value.isWhole) value.reckonOn();
        const followed = linesByYear(followPlan(plan, tools, value.course));
        const expected = followed.reduce(
          (sum, lines, year) =>
            sum + weighed(costOfLines(lines, planWeights), planWeights.byYear[year] ?? []),
          0,
        );
        expect(Math.abs(value.atLeast - expected), plan.id).toBeLessThanOrEqual(1e-9 * expected);
      }
    }
  });

  it("comes nearest to its limit where the layer of all years does", () => {
    const context = contextOf(drawnDownLake, 16);
    const [hull] = componentsOf(floatingDock, context);
    if (!hull) throw new Error("no hull");
    const tooThick = { broken: "too thick", assumptionIds: [] };
    const component: Component = {
      ...hull,
      limit: (meet, { thickness }) => meet(tooThick, thickness, 0.1),
    };
    const surface = context.growing(component.surface);
    const leave = candidatePlans(component, context).plans.find(({ routine }) => routine.by === "nothing");
    if (!leave) throw new Error("no plan");
    const value = planValues(planTools({ component, context, surface }))(leave);
    while (!value.isWhole) value.reckonOn();
    const layers = growLayers({ surface, density: context.density }, context.growth);
    const thickest = Math.max(...layers.map(({ thickness }) => thickness));
    expect(value.nearest).toEqual({ limit: tooThick, load: expect.closeTo(thickest / 0.1, 12) });
  });

  it("is one and the same for all plans by which nothing is ever done", () => {
    const barely = assumedWith({ "cleaning.smallest-layer": 1e6 });
    const context = contextOf(drawnDownLake, 16, barely);
    const [component] = componentsOf(floatingDock, context);
    if (!component) throw new Error("no hull");
    const tools = planTools({ component, context, surface: context.growing(component.surface) });
    const valueBy = planValues(tools);
    const { plans } = candidatePlans(component, context);
    const [first, ...rest] = plans.filter(({ protection }) => protection === undefined).map(valueBy);
    expect(rest.length).toBeGreaterThan(2);
    expect(new Set([first, ...rest]).size).toBe(1);
    const inspected = plans.find(({ routine }) => routine.by === "trigger");
    expect(inspected && valueBy(inspected)).not.toBe(first);
    // Where each date meets a layer worth a visit, each plan has its own.
    const usual = contextOf(drawnDownLake, 16);
    const own = planValues(
      planTools({ component, context: usual, surface: usual.growing(component.surface) }),
    );
    const free = plans.filter(({ protection }) => protection === undefined);
    expect(new Set(free.map(own)).size).toBe(free.length);
  });

  it.each<[string, Structure]>([
    ["a floating dock", floatingDock],
    ["an intake that may be dosed", dosed],
  ])(
    "is no less by its dates than that of a plan whose dates are all among its own: %s",
    (_what, structure) => {
      const context = contextOf(drawnDownLake, 16, lateProtected);
      let compared = 0;
      for (const component of componentsOf(structure, context)) {
        const valueBy = planValues(
          planTools({ component, context, surface: context.growing(component.surface) }),
        );
        const dated = (plan: Plan) => {
          const value = valueBy(plan);
          while (!value.isWhole) value.reckonOn();
          return value.dated;
        };
        const { plans } = candidatePlans(component, context);
        for (const plan of plans) {
          for (const rarer of plans.filter((each) => each !== plan && areAmong(each, plan))) {
            expect(dated(plan), `${plan.id} and ${rarer.id}`).toBeGreaterThanOrEqual(dated(rarer));
            compared += 1;
          }
        }
      }
      expect(compared).toBeGreaterThan(20);
    },
  );
});
