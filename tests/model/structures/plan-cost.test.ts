import { describe, expect, it } from "vitest";
import { at, sumOf } from "../../../src/lists.js";
import { compare } from "../../../src/model/compare.js";
import type { Layer } from "../../../src/model/mussels/layer.js";
import type { Component, Plan } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake } from "../lakes.js";
import { growLayers } from "../mussels/growing.js";
import { relativeGap } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, plant, pumpedIntake, studyOf } from "../study.js";
import { followPlainly } from "./followed-plainly.js";
import { keptPart } from "./kept.js";

/** Another route to a plan's yearly cost: what it costs in each year, followed month by month, by the weight of the year. */
function costMonthByMonth(plan: Plan, component: Component, context: LakeContext): number {
  const { costs } = followPlainly(plan, component, context);
  const weights = weightsOf(costs.length);
  return costs.reduce((sum, cost, year) => sum + cost * (weights[year] ?? Number.NaN), 0) / sumOf(weights);
}

/** At 3 % in mid-year: an infestation is as likely to begin in one year of the horizon as in another. */
function weightsOf(years: number): number[] {
  const factors = Array.from({ length: years }, (_, year) => 1.03 ** -(year + 1 / 2));
  return factors.map((_, age) => sumOf(factors.slice(age)) / years);
}

/** Mussels as dense from the first month on as they ever are. */
const denseAtOnce = assumedWith({ "population.initial-share": 0.99999, "population.peak-share": 0.999999 });

describe("the cost of a plan", () => {
  const structures = {
    intake: pumpedIntake,
    "close intake": { ...gravityIntake, rack: { ...gravityIntake.rack, headLossLimit: 0.03 } },
    powerhouse: plant,
    dock: floatingDock,
    pier: fixedDock,
    "pier that falls dry": { ...fixedDock, elevation: 95 },
  };

  it.each(Object.keys(structures))("is what following it month by month costs: %s", (name) => {
    const context = contextOf(drawnDownLake, 20);
    const structure = structures[name as keyof typeof structures];
    const count = componentsOf(structure, context).length;
    for (let part = 0; part < count; part++) {
      const made = () => at(componentsOf(structure, context), part);
      const component = made();
      const { everyPlan } = keptPart(() => [{ component: made(), context }]);
      const tried = everyPlan();
      expect(tried.length).toBeGreaterThan(11);
      for (const { plan, yearlyCost } of tried) {
        const expected = costMonthByMonth(plan, component, context);
        expect(Math.abs(yearlyCost - expected), `${component.name}, ${plan.id}`).toBeLessThanOrEqual(
          1e-9 * expected,
        );
      }
    }
  });

  it.each([12, 24, 36])(
    "of a dock cleaned every %d months is area, disposal and wear a year, summed by hand",
    (interval) => {
      const years = 18;
      const context = contextOf(drawnDownLake, years, denseAtOnce);
      const made = () => at(dockComponents(floatingDock, context), 0);
      const hull = made();
      const found = keptPart(() => [{ component: made(), context }])
        .everyPlan()
        .find(({ plan }) => plan.id === `divers-${interval}`);
      const layers = growLayers(
        {
          surface: context.growing(hull.surface),
          density: Array<number>(interval).fill(context.matureDensity),
        },
        context.growth,
      );
      const area = floatingDock.wettedArea * floatingDock.count;
      const perKg = assumed("disposal.tipping-fee") + assumed("disposal.haulage");
      const removed = layers[interval - 1]?.mass ?? Number.NaN;
      const cleaning = area * assumed("cleaning.hull.rate") + removed * area * perKg;
      const wear = ({ mass }: Layer) => {
        const load = Math.min(1, mass / assumed("dock.wear-mass"));
        return (floatingDock.count * floatingDock.replacementCost * assumed("dock.extra-wear") * load) / 12;
      };
      const weights = weightsOf(years);
      const expected = weights.reduce((sum, weight, year) => {
        const from = (year * 12) % interval;
        const worn = sumOf(layers.slice(from, from + 12).map(wear));
        return sum + weight * (worn + (((year + 1) * 12) % interval === 0 ? cleaning : 0));
      }, 0);
      expect(relativeGap(found?.yearlyCost ?? Number.NaN, expected / sumOf(weights))).toBeLessThan(1e-3);
    },
  );

  it("rises with the price of the work that it holds, and not with others", () => {
    const plansUnder = (source: typeof assumed) =>
      compare(studyOf([floatingDock]), source).structures[0]?.components[0]?.everyPlan() ?? [];
    const costs = (source: typeof assumed) =>
      new Map(plansUnder(source).map(({ plan, yearlyCost }) => [plan.id, yearlyCost]));
    const before = costs(assumed);
    const dearer = costs(assumedWith({ "cleaning.hull.rate": assumed("cleaning.hull.rate") * 2 }));
    const byRoutine = plansUnder(assumed).map(({ plan }) => [plan.id, plan.routine.by] as const);
    expect(byRoutine).toContainEqual(["leave", "nothing"]);
    expect(byRoutine).toContainEqual(["divers-12", "interval"]);
    for (const [id, by] of byRoutine) {
      const cost = before.get(id) ?? Number.NaN;
      // A buoyant dock has no limit to come near, so that inspections never lead to work.
      if (by === "nothing" || by === "trigger") expect(dearer.get(id)).toBe(cost);
      else expect(dearer.get(id)).toBeGreaterThan(cost);
    }
    expect(costs(assumedWith({ "cleaning.rack.base": 100 }))).toEqual(before);
  });
});
