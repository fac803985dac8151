import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { growLayers } from "../../../src/model/mussels/growth.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import type { Component, Plan, Priced } from "../../../src/model/structures/component.js";
import type { LakeContext } from "../../../src/model/structures/context.js";
import { nearLimit } from "../../../src/model/structures/growth-between-visits.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import { forcedCleaning } from "../../../src/model/structures/limits.js";
import { removalLines, shellLines, workLines } from "../../../src/model/structures/plan-work.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { keepInService } from "../../../src/model/structures/upkeep.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake } from "../lakes.js";
import { relativeGap } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, plant, pumpedIntake, studyOf } from "../study.js";

/**
 * Another route to a plan's yearly cost: the layer grown month by month through the plan's own dates for twelve
 * years, and what falls due in the last cycle added up. What has no dates is grown for three years, and then costed
 * over seven.
 */
function costMonthByMonth(plan: Plan, component: Component, context: LakeContext): number {
  const { cycle, months } = monthsOf(plan);
  const isDate = (month: number) =>
    plan.routine.by === "interval"
      ? (month + 1) % plan.routine.months === 0
      : plan.routine.by === "month-of-year" && month % 12 === plan.routine.month;
  const { routine } = plan;
  const isNear = routine.by === "trigger" ? nearLimit(routine, component, context) : () => false;
  const visits = new Set<number>();
  const factor = plan.protection?.settlementFactor ?? 1;
  const layers = growLayers(
    {
      surface: context.growing(component.surface),
      density: Array<number>(months).fill(context.matureDensity * factor),
      cleanAfter: (month, layer) => {
        const isVisited = isNear(layer, month % 12) || isDate(month);
        if (isVisited) visits.add(month);
        return isVisited;
      },
    },
    context.growth,
  );
  const forced = forcedCleaning(component, context);
  let cost = 0;
  for (let month = months - cycle; month < months; month++) {
    const layer = layers[month] ?? bareSurface;
    const lines: Priced[] = layer.mass > 0 ? [...component.losses(layer, month % 12)] : [];
    if (layer.mass > 0) lines.push(...forced.lines(component.limit(layer, month % 12), month % 12));
    lines.push(...shellLines(layer, component, context), ...(plan.protection?.monthly[month % 12] ?? []));
    if (visits.has(month)) {
      lines.push(...workLines(plan.entry, component, context, month % 12));
      lines.push(...removalLines(plan, layer, component, context));
    }
    cost += lines.reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);
  }
  return (cost / cycle) * 12;
}

function monthsOf({ routine }: Plan) {
  if (routine.by === "nothing" || routine.by === "trigger") return { cycle: 84, months: 36 + 84 };
  const cycle = routine.by === "interval" ? Math.max(12, routine.months) : 12;
  return { cycle, months: cycle * Math.max(2, Math.floor(144 / cycle)) };
}

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
    for (const component of componentsOf(structure, context)) {
      const { everyPlan } = keepInService([{ component, context }]);
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
      const context = contextOf(drawnDownLake, 20);
      const [hull] = dockComponents(floatingDock, context);
      if (!hull) throw new Error("no hull");
      const found = keepInService([{ component: hull, context }])
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
      const wear = layers.reduce((sum, { mass }) => {
        const load = Math.min(1, mass / assumed("dock.wear-mass"));
        return (
          sum + (floatingDock.count * floatingDock.replacementCost * assumed("dock.extra-wear") * load) / 12
        );
      }, 0);
      expect(relativeGap(found?.yearlyCost ?? Number.NaN, ((cleaning + wear) * 12) / interval)).toBeLessThan(
        1e-10,
      );
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
