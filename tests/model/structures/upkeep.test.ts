import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import type { Dock, Intake } from "../../../src/model/inputs.js";
import { growingSurface, growLayers } from "../../../src/model/mussels/layer.js";
import type { Priced, TriedPlan } from "../../../src/model/structures/component.js";
import { lakeContext } from "../../../src/model/structures/context.js";
import { dockComponents } from "../../../src/model/structures/dock.js";
import { cheapest, keepInService, mergeLines } from "../../../src/model/structures/upkeep.js";
import { assumed, assumedWith } from "../assumptions.js";
import { drawnDownLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, pumpedIntake, studyOf } from "../study.js";

const docks: fc.Arbitrary<Dock> = fc
  .record({
    count: fc.integer({ min: 1, max: 30 }),
    wettedArea: fc.double({ min: 5, max: 900, noNaN: true }),
    spareBuoyancy: fc.double({ min: 0.5, max: 8, noNaN: true }),
    replacementCost: fc.integer({ min: 1000, max: 2_000_000 }),
    elevation: fc.double({ min: 78, max: 101, noNaN: true }),
    floating: fc.boolean(),
  })
  .map(({ elevation, floating, ...rest }) => ({
    ...(floating ? floatingDock : fixedDock),
    ...rest,
    ...(floating ? {} : { elevation }),
  }));

const intakes: fc.Arbitrary<Intake> = fc
  .record({
    elevation: fc.double({ min: 70, max: 98, noNaN: true }),
    diameter: fc.double({ min: 0.5, max: 2, noNaN: true }),
    length: fc.double({ min: 50, max: 3000, noNaN: true }),
    flow: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
    oxidantAllowed: fc.boolean(),
    headLossLimit: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
    pumped: fc.boolean(),
  })
  .map(({ diameter, length, flow, headLossLimit, pumped, ...rest }) => {
    const base = pumped ? pumpedIntake : gravityIntake;
    return {
      ...base,
      ...rest,
      demand: everyMonth(flow),
      conduit: { ...base.conduit, diameter, length },
      rack: { ...base.rack, headLossLimit },
    };
  });

/** Brute force: no tried plan that keeps the limits is cheaper, and one that breaks them is taken only in need. */
function expectBestOf(tried: readonly TriedPlan[], chosen: TriedPlan): void {
  const keeping = tried.filter(({ brokenLimit }) => brokenLimit === undefined);
  expect(tried).toContain(chosen);
  if (keeping.length > 0) {
    expect(chosen.brokenLimit).toBeUndefined();
    expect(chosen.yearlyCost).toBe(Math.min(...keeping.map(({ yearlyCost }) => yearlyCost)));
  } else {
    expect(chosen.brokenLimit).toBeDefined();
    expect(chosen.plan.intervalMonths).toBe(1);
  }
}

describe("the chosen plan", () => {
  it("is the cheapest of those tried that keep the limits, for any dock and intake", () => {
    fc.assert(
      fc.property(docks, intakes, (dock, intake) => {
        for (const { components } of compare(studyOf([dock, intake]), assumed).structures) {
          for (const { tried, chosen } of components) expectBestOf(tried, chosen);
        }
      }),
      { seed: 181, numRuns: 40 },
    );
  });

  it("was tried against every interval of the work calendar and against leaving the layer", () => {
    const [result] = compare(studyOf([pumpedIntake]), assumed).structures;
    const conduit = result?.components.find(({ name }) => name === "conduit");
    expect(conduit?.tried.map(({ plan }) => [plan.method, plan.intervalMonths])).toEqual([
      ["leave", undefined],
      ["oxidant", 12],
      ...[60, 48, 36, 24, 12, 6, 4, 3, 2, 1].map((months) => ["divers", months]),
    ]);
  });

  it("leaves a dosed surface bare at each year's end, when what settled in the season is dead", () => {
    const [result] = compare(studyOf([pumpedIntake]), assumed).structures;
    const conduit = result?.components.find(({ name }) => name === "conduit");
    const dosed = conduit?.tried.find(({ plan }) => plan.method === "oxidant")?.plan;
    const bare = Array.from({ length: 24 }, (_, month) => month).filter((month) =>
      dosed?.isCleaningDate(month),
    );
    expect(bare).toEqual([11, 23]);
  });

  it("may be cleaning in the dry only where the water leaves the surface long enough, and not all year", () => {
    // Lowered to 90 m for 58 days in winter: 95 m falls dry, 88 m does not, 101 m is never wet.
    const methods = (elevation: number) =>
      compare(studyOf([{ ...fixedDock, elevation }]), assumed).structures.flatMap(({ components }) =>
        components.flatMap(({ tried }) => tried.map(({ plan }) => plan.method)),
      );
    expect(methods(95)).toContain("dry");
    expect(methods(88)).not.toContain("dry");
    expect(methods(101)).not.toContain("dry");
  });
});

const triedOf = (yearlyCost: number, months: number, brokenLimit?: string): TriedPlan => ({
  plan: { label: `${months}`, method: "divers", intervalMonths: months, isCleaningDate: () => false },
  yearlyCost,
  brokenLimit,
  thickestLayer: { number: 0, lengthMm: 0, cover: 0, mass: 0, thickness: 0, killed: 0 },
});

describe("the choice", () => {
  it("passes over cheap plans that break a limit, and prefers the first of equals", () => {
    expect(cheapest([triedOf(1, 60, "too thick"), triedOf(5, 12), triedOf(9, 6)]).yearlyCost).toBe(5);
    expect(cheapest([triedOf(5, 24), triedOf(5, 12)]).plan.intervalMonths).toBe(24);
  });

  it("takes the busiest plan where none keeps the limits", () => {
    expect(cheapest([triedOf(1, 60, "x"), triedOf(2, 12, "x"), triedOf(3, 1, "x")]).plan.intervalMonths).toBe(
      1,
    );
  });
});

describe("the cost of a plan", () => {
  it.each([12, 24, 36])(
    "of a dock cleaned every %d months is area, disposal and wear a year, summed by hand",
    (interval) => {
      const context = lakeContext(drawnDownLake, 20, assumed);
      const [hull] = dockComponents(floatingDock, context);
      if (!hull) throw new Error("no hull");
      const found = keepInService(hull, context).tried.find(({ plan }) => plan.intervalMonths === interval);
      const layers = growLayers(
        {
          surface: growingSurface(context.months(hull.surface), context.growth),
          density: Array<number>(interval).fill(context.matureDensity),
          cleanAfter: (month) => month === interval - 1,
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
    const costs = (source: typeof assumed) =>
      compare(studyOf([floatingDock]), source).structures[0]?.components[0]?.tried.map(
        ({ yearlyCost }) => yearlyCost,
      );
    const before = costs(assumed) ?? [];
    const dearer = costs(assumedWith({ "cleaning.hull.rate": assumed("cleaning.hull.rate") * 2 })) ?? [];
    expect(dearer[0]).toBe(before[0]); // left as it is
    before.slice(1).forEach((cost, index) => {
      expect(dearer[index + 1]).toBeGreaterThan(cost);
    });
    expect(costs(assumedWith({ "cleaning.rack.rate": 500 }))).toEqual(before);
  });
});

describe("merged lines", () => {
  it("keep quantity and cost of what they merge", () => {
    const line = (what: string, quantity: number, unitRate: number): Priced => ({
      what,
      type: "work",
      quantity,
      quantityKind: "area",
      unitRate,
      assumptionIds: [],
    });
    const drafts = fc.array(
      fc.tuple(
        fc.constantFrom("a", "b", "c"),
        fc.integer({ min: 0, max: 500 }),
        fc.integer({ min: 0, max: 90 }),
      ),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(drafts, (list) => {
        const lines = list.map(([what, quantity, unitRate]) => line(what, quantity, unitRate));
        const merged = mergeLines(lines);
        const cost = (each: readonly Priced[]) => each.reduce((sum, x) => sum + x.quantity * x.unitRate, 0);
        const quantity = (each: readonly Priced[]) => each.reduce((sum, x) => sum + x.quantity, 0);
        expect(new Set(merged.map(({ what }) => what)).size).toBe(merged.length);
        expect(cost(merged)).toBeCloseTo(cost(lines), 6);
        expect(quantity(merged)).toBe(quantity(lines));
      }),
      { seed: 182, numRuns: 200 },
    );
  });
});
