import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { cleaningOf } from "../../../src/model/structures/cleaning.js";
import type { Priced } from "../../../src/model/structures/component.js";
import { hydropowerComponents } from "../../../src/model/structures/hydropower.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import { workLines } from "../../../src/model/structures/plan-work.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith, assumptionSet } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake } from "../lakes.js";
import { fixedDock, floatingDock, plant } from "../study.js";
import { lossesOf } from "./losses.js";

const context = contextOf(drawnDownLake, 15, assumed);
const costOf = (lines: readonly Priced[]) =>
  lines.reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);

describe("one cleaning", () => {
  it("costs its area at the rate and a visit", () => {
    // By hand from the price list: 30 m2 at the rack's rate, one visit.
    const expected = 30 * assumed("cleaning.rack.base") + assumed("cleaning.rack.visit");
    expect(costOf(cleaningOf("rack", 30, context).work())).toBeCloseTo(expected, 8);
  });

  it("costs more on a rack the more is on it, and on nothing else", () => {
    // By hand: 150 kg at the price by mass; in the dry a share of it.
    const expected = 150 * assumed("cleaning.rack.removal");
    const { removal } = cleaningOf("rack", 30, context);
    expect(costOf(removal(150))).toBeCloseTo(expected, 8);
    expect(removal(150)[0]?.assumptionIds).toEqual(["cleaning.rack.removal"]);
    const [inTheDry] = removal(150, "cleaning.dry-share");
    expect(costOf(removal(150, "cleaning.dry-share"))).toBeCloseTo(
      assumed("cleaning.dry-share") * expected,
      8,
    );
    expect(inTheDry?.assumptionIds).toEqual(["cleaning.rack.removal", "cleaning.dry-share"]);
    for (const subject of ["conduit", "hull", "service-line"] as const)
      expect(cleaningOf(subject, 30, context).removal(150)).toEqual([]);
  });

  it("comes to no price by mass where a study has none", () => {
    const free = contextOf(drawnDownLake, 15, assumedWith({ "cleaning.rack.removal": 0 }));
    expect(cleaningOf("rack", 30, free).removal(150)).toEqual([]);
    const atNone = contextOf(drawnDownLake, 15, assumedWith({ "cleaning.dry-share": 0 }));
    expect(cleaningOf("rack", 30, atNone).removal(150, "cleaning.dry-share")).toEqual([]);
  });

  it("of a rack costs two to three times as much under 20 mm as under 5 mm, without the visit", () => {
    // Order by hand from the price list: 12 + 10 × 0.005 × 500 = 37 and 12 + 10 × 0.02 × 500 = 112 USD/m2 of surface.
    const perArea = (thickness: number) =>
      assumed("cleaning.rack.base") +
      assumed("cleaning.rack.removal") * thickness * assumed("growth.bulk-density");
    expect(perArea(0.02) / perArea(0.005)).toBeCloseTo(112 / 37, 1);
    // A removal told in 1997 at 20 USD/kg of 2025 (usgs-1997, second hand) is the ceiling: 200 USD/m2 under 20 mm.
    expect(perArea(0.02)).toBeLessThan(200);
  });

  it("costs a share of that in the dry", () => {
    const { work } = cleaningOf("rack", 30, context);
    const share = assumed("cleaning.dry-share");
    const dry = work("cleaning.dry-share");
    expect(costOf(dry)).toBeCloseTo(share * costOf(work()), 8);
    expect(dry.every(({ assumptionIds }) => assumptionIds.includes("cleaning.dry-share"))).toBe(true);
  });

  it("is charged at that share by a plan that works in the dry", () => {
    const [hull] = dockComponents(fixedDock, context);
    const dry = assumptionSet.plans.find(({ id }) => id === "dry");
    if (!hull || !dry) throw new Error("no hull or plan");
    expect(workLines(dry, hull, context, 3)).toEqual(hull.cleaning.work("cleaning.dry-share"));
  });

  it("names the prices behind it", () => {
    const { work } = cleaningOf("conduit", 30, context);
    expect(work()[0]?.assumptionIds).toEqual(["cleaning.conduit.rate"]);
  });

  it("takes a unit out of service, by whichever method with tools", () => {
    const rack = hydropowerComponents(plant, context).find(({ kind }) => kind === "rack");
    if (!rack) throw new Error("no rack");
    const { outage } = rack;
    const days = assumed("hydropower.outage-days");
    for (const id of ["divers", "dry", "trigger", "foul-release"]) {
      const entry = assumptionSet.plans.find((each) => each.id === id);
      if (!entry) throw new Error(`no plan ${id}`);
      const outages = workLines(entry, rack, context, 3).filter(({ what }) => what.includes("outages"));
      expect(outages).toEqual([{ ...outage?.charge(3), quantity: outage?.quantity(days, 3) }]);
    }
  });
});

describe("the wear of a dock", () => {
  it("counts in full at the wear mass and no further", () => {
    // By hand: five docks of 150,000 at 1 % a year, a twelfth in each month.
    const [hull] = dockComponents(floatingDock, context);
    const wear = (mass: number) => costOf(lossesOf(hull, { ...bareSurface, mass }, 0));
    const full = (5 * 150_000 * assumed("dock.extra-wear")) / 12;
    const wearMass = assumed("dock.wear-mass");
    expect(wear(wearMass)).toBeCloseTo(full, 8);
    expect(wear(wearMass / 2)).toBeCloseTo(full / 2, 8);
    expect(wear(wearMass * 3)).toBeCloseTo(full, 8);
  });
});

describe("the work of the years since establishment", () => {
  const pinned = [{ part: "wetted surface", plan: "divers-12", reason: "contract" }];
  const heavy = { ...floatingDock, spareBuoyancy: 0.5, pinned };
  const cleaningYears = (source: typeof assumed) =>
    structureResult(heavy, [contextOf(drawnDownLake, 15, source)]).years.map((lines) =>
      lines.some(({ what }) => what.includes("cleaning the hull") && !what.endsWith("forced")),
    );

  it("starts with the first layer worth a visit and is kept up as a routine from then on", () => {
    const cleaned = cleaningYears(assumed);
    const first = cleaned.indexOf(true);
    expect(first).toBeGreaterThan(0);
    expect(cleaned.slice(first)).toEqual(cleaned.slice(first).map(() => true));
  });

  it("never starts where no layer is worth a visit", () => {
    expect(cleaningYears(assumedWith({ "cleaning.smallest-layer": 10 }))).not.toContain(true);
  });

  it("removes the shells of what a drawdown kills", () => {
    // A pier at 95 m is bare in January and February. Common sense of mass: as much as was killed, shells only.
    const pier = { ...fixedDock, elevation: 95, replacementCost: 0 };
    const { years, components } = structureResult(pier, [context]);
    expect(components[0]?.chosen.plan.id).toBe("leave");
    const mature = years.at(-1)?.find(({ what }) => what.includes("disposal"));
    const perSquareMetre = (mature?.quantity ?? Number.NaN) / pier.wettedArea / assumed("shell.shell-share");
    // Killed wet mass lies between a light and the heaviest one-season layer, 1 to 15 kg/m2 (Konin lakes).
    expect(perSquareMetre).toBeGreaterThan(1);
    expect(perSquareMetre).toBeLessThan(15);
    const rate = assumed("disposal.tipping-fee") + assumed("disposal.haulage");
    expect(mature?.unitRate).toBeCloseTo(rate, 10);
  });
});
