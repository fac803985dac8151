import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { dailyElevations } from "../../../src/model/lake/levels.js";
import { planId } from "../../../src/model/structures/catalogue.js";
import type { ComponentResult, Priced } from "../../../src/model/structures/component.js";
import type { Hydropower, Intake } from "../../../src/model/structures/inputs.js";
import type { Dock } from "../../../src/model/structures/kinds/dock.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { assumed, assumedWith, assumptionSet } from "../assumptions.js";
import { drawnDownLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, plant, pumpedIntake, studyOf } from "../study.js";
import { mergedLines } from "./kept.js";

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

/** Brute force over all plans: none is cheaper, and none listed before costs the same. */
function expectBestOf({ everyPlan, chosen }: ComponentResult): void {
  const tried = everyPlan();
  const best = Math.min(...tried.map(({ yearlyCost }) => yearlyCost));
  expect(chosen.yearlyCost).toBe(best);
  expect(chosen.plan.id).toBe(tried.find(({ yearlyCost }) => yearlyCost === best)?.plan.id);
}

const powerPlants: fc.Arbitrary<Hydropower> = fc
  .record({
    elevation: fc.double({ min: 62, max: 99, noNaN: true }),
    units: fc.integer({ min: 1, max: 4 }),
    requiredFlow: fc.double({ min: 0.001, max: 0.02, noNaN: true }),
    price: fc.double({ min: 0, max: 0.2, noNaN: true }),
  })
  .map(({ requiredFlow, price, ...rest }) => ({
    ...plant,
    ...rest,
    energyPrice: everyMonth(price),
    coolingWater: { ...plant.coolingWater, requiredFlow },
  }));

/** Levels of two years, one of them without a drawdown. */
const record = [
  { label: "2001", daily: dailyElevations(drawnDownLake.drawdown) },
  { label: "2002", daily: dailyElevations([{ dayOfYear: 0, elevation: 98 }]) },
];

describe("the chosen plan", () => {
  it("is what trying every plan finds, for any dock, intake and power plant", () => {
    fc.assert(
      fc.property(docks, intakes, powerPlants, fc.boolean(), (dock, intake, hydropower, recorded) => {
        const lake = recorded ? { ...drawnDownLake, record } : drawnDownLake;
        const study = studyOf([dock, intake, hydropower], { lake });
        for (const { components } of compare(study, assumed).structures) {
          for (const component of components) expectBestOf(component);
        }
      }),
      { seed: 181, numRuns: 60 },
    );
  });

  it("was tried against the whole catalogue for its part", () => {
    const conduit = partOf(pumpedIntake, "conduit", assumedWith({ "plan.size-reach": 1000 }));
    const entries = assumptionSet.plans.filter(({ parts }) => parts.includes("conduit"));
    const offered = entries.flatMap((entry) => entry.intervals.map((months) => planId(entry, months)));
    const tried = conduit.everyPlan().map(({ plan }) => plan.id);
    const impossible = conduit.impossible.map(({ id }) => id);
    expect([...tried, ...impossible].sort()).toEqual([...offered].sort());
    // The water never leaves it, and an oxidant is allowed.
    const inTheDry = entries.filter(({ measure }) => measure === "dry");
    expect(impossible).toEqual(inTheDry.map(({ id }) => id));
    expect(inTheDry.length).toBeGreaterThan(0);
  });

  it("may be an oxidant only where the study allows it, and says so", () => {
    const { impossible } = partOf(gravityIntake, "conduit");
    const reasons = new Map(impossible.map(({ id, reason }) => [id, reason]));
    expect(reasons.get("oxidant-season")).toMatch(/does not allow/);
    expect(reasons.get("oxidant-end")).toMatch(/does not allow/);
  });

  it("may be cleaning in the dry only where the water leaves the surface long enough, and not all year", () => {
    // Lowered to 90 m for 58 days in winter: 95 m falls dry, 88 m does not, 101 m is never wet.
    const dry = (elevation: number) =>
      partOf({ ...fixedDock, elevation }, "wetted surface").impossible.find(({ id }) => id === "dry")?.reason;
    expect(dry(95)).toBeUndefined();
    expect(dry(88)).toBe("the water never leaves it");
    expect(dry(101)).toBe("the water never reaches it");
    // Nothing of what is offered to other parts alone is told of.
    const reasons = partOf(floatingDock, "wetted surface").impossible.map(({ id, reason }) => [id, reason]);
    expect(reasons).toEqual([["dry", "it floats and is never exposed"]]);
  });

  it("comes to leaving the part where nothing is worth a visit, and no protection ever begins", () => {
    const comesTo = (replaced: Readonly<Record<string, number>>) =>
      new Map(
        partOf(floatingDock, "wetted surface", assumedWith(replaced))
          .everyPlan()
          .map(({ plan, comesToLeaving }) => [plan.id, comesToLeaving]),
      );
    const nothingWorth = { "cleaning.smallest-layer": 10 };
    const usual = comesTo({});
    expect(["leave", "divers-12", "foul-release"].map((id) => usual.get(id))).toEqual([false, false, false]);
    const thin = comesTo(nothingWorth);
    expect(["leave", "divers-12", "foul-release"].map((id) => thin.get(id))).toEqual([false, true, false]);
    // No share of the lake's capacity is above 1.
    const never = comesTo({ ...nothingWorth, "protection.start-density": 2 });
    expect(["leave", "divers-12", "foul-release"].map((id) => never.get(id))).toEqual([false, true, true]);
  });

  it("gives way to one that the study prescribes, with its reason and what would have been chosen", () => {
    const free = partOf(floatingDock, "wetted surface");
    const pinned = [{ part: "wetted surface", plan: "divers-6", reason: "contract runs to 2031" }];
    const { chosen, pinned: found } = partOf({ ...floatingDock, pinned }, "wetted surface");
    expect(chosen.plan.id).toBe("divers-6");
    expect(found).toMatchObject({ reason: "contract runs to 2031" });
    expect(found?.cheapest.plan.id).toBe(free.chosen.plan.id);
  });
});

function partOf(structure: Structure, name: string, source = assumed): ComponentResult {
  const found = compare(studyOf([structure]), source).structures[0]?.components.find(
    (each) => each.name === name,
  );
  if (!found) throw new Error(`no part ${name}`);
  return found;
}

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
        const merged = mergedLines(lines);
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
