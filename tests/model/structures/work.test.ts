import { describe, expect, it } from "vitest";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { cleaningOf } from "../../../src/model/structures/cleaning.js";
import type { Priced } from "../../../src/model/structures/component.js";
import { lakeContext } from "../../../src/model/structures/context.js";
import { dockComponents } from "../../../src/model/structures/dock.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { drawnDownLake } from "../lakes.js";
import { fixedDock, floatingDock } from "../study.js";

const context = lakeContext(drawnDownLake, 15, assumed);
const costOf = (lines: readonly Priced[]) =>
  lines.reduce((sum, { quantity, unitRate }) => sum + quantity * unitRate, 0);

describe("one cleaning", () => {
  const outage: Priced = {
    what: "outage",
    type: "loss",
    quantity: 100,
    quantityKind: "energy",
    unitRate: 0.05,
    assumptionIds: [],
  };

  it("costs its area at the rate and a visit", () => {
    // By hand from the price list: 30 m2 at the rack's rate, one visit.
    const expected = 30 * assumed("cleaning.rack.rate") + assumed("cleaning.rack.visit");
    expect(costOf(cleaningOf("rack", 30, context).work("divers", 0))).toBeCloseTo(expected, 8);
  });

  it("costs a share of that in the dry", () => {
    const { work } = cleaningOf("rack", 30, context);
    const share = assumed("cleaning.dry-share");
    expect(costOf(work("dry", 0))).toBeCloseTo(share * costOf(work("divers", 0)), 8);
    expect(work("dry", 0).every(({ assumptionIds }) => assumptionIds.includes("cleaning.dry-share"))).toBe(
      true,
    );
  });

  it("interrupts service, by whichever method, and names the prices behind it", () => {
    const { work } = cleaningOf("conduit", 30, context, () => [outage]);
    for (const method of ["divers", "dry"] as const) {
      expect(work(method, 3).filter(({ what }) => what === "outage")).toEqual([outage]);
    }
    expect(work("divers", 3)[0]?.assumptionIds).toEqual(["cleaning.conduit.rate"]);
  });
});

describe("the wear of a dock", () => {
  it("counts in full at the wear mass and no further", () => {
    // By hand: five docks of 150,000 at 1 % a year, a twelfth in each month.
    const [hull] = dockComponents(floatingDock, context);
    const wear = (mass: number) => costOf(hull?.losses({ ...bareSurface, mass }, 0) ?? []);
    const full = (5 * 150_000 * assumed("dock.extra-wear")) / 12;
    const wearMass = assumed("dock.wear-mass");
    expect(wear(wearMass)).toBeCloseTo(full, 8);
    expect(wear(wearMass / 2)).toBeCloseTo(full / 2, 8);
    expect(wear(wearMass * 3)).toBeCloseTo(full, 8);
  });
});

describe("the work of the years since establishment", () => {
  const heavy = { ...floatingDock, spareBuoyancy: 0.5 };
  const cleaningYears = (source: typeof assumed) =>
    structureResult(heavy, lakeContext(drawnDownLake, 15, source)).years.map((lines) =>
      lines.some(({ what }) => what.includes("cleaning the hull")),
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
    const { years, components } = structureResult(pier, context);
    expect(components[0]?.chosen.plan.method).toBe("leave");
    const mature = years.at(-1)?.find(({ what }) => what.includes("disposal"));
    const perSquareMetre = (mature?.quantity ?? Number.NaN) / pier.wettedArea / assumed("shell.shell-share");
    // Killed wet mass lies between a light and the heaviest one-season layer, 1 to 15 kg/m2 (Konin lakes).
    expect(perSquareMetre).toBeGreaterThan(1);
    expect(perSquareMetre).toBeLessThan(15);
    const rate = assumed("disposal.tipping-fee") + assumed("disposal.haulage");
    expect(mature?.unitRate).toBeCloseTo(rate, 10);
  });
});
