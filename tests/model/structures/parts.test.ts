import { describe, expect, it, test } from "vitest";
import { pumpPower } from "../../../src/model/hydraulics/power.js";
import { rackLoss } from "../../../src/model/hydraulics/rack.js";
import type { Lake } from "../../../src/model/lake/lake.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { cleaningOf } from "../../../src/model/structures/cleaning.js";
import type { Component } from "../../../src/model/structures/component.js";
import { operatingYear } from "../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../src/model/structures/inputs.js";
import { dockComponents } from "../../../src/model/structures/kinds/dock.js";
import { kindOf, type Structure } from "../../../src/model/structures/kinds.js";
import { rackVelocity } from "../../../src/model/structures/rack.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { growLayers } from "../mussels/growing.js";
import { everyMonth, relativeGap } from "../near.js";
import { fixedDock, floatingDock, gravityIntake, plant, pumpedIntake } from "../study.js";
import { brokenLimit } from "./limits-met.js";
import { lossesOf } from "./losses.js";

const context = contextOf(productiveLake, 5);

function partOf(structure: Structure, kind: Component["kind"]): Component {
  const part = componentsOf(structure, context).find((each) => each.kind === kind);
  if (!part) throw new Error(`no ${kind}`);
  return part;
}

const layerOf = (thickness: number): Layer => ({
  ...bareSurface,
  cover: 2,
  lengthMm: thickness * 1000,
  thickness,
  mass: 2,
});

describe("a rack", () => {
  it("is fouled on both sides, front and back of its bars", () => {
    // By hand: 3 m of face hold 3/0.07 bars of 10 mm by 60 mm, 140 mm around, 3 m high: 18 m2.
    expect(partOf(pumpedIntake, "rack").wettedArea).toBeCloseTo(18, 9);
  });

  it("takes treatments for its largest flow", () => {
    expect(partOf(pumpedIntake, "rack").designFlow).toBe(1.2);
    expect(partOf(pumpedIntake, "conduit").designFlow).toBe(1.2);
  });

  it("passes nothing once closed, with or without a flow", () => {
    for (const flow of [0, 1])
      expect(rackVelocity(pumpedIntake.rack, 0.03, flow)).toBe(Number.POSITIVE_INFINITY);
  });

  it("costs a pump the extra head, and a gravity intake nothing", () => {
    // By hand: 1.2 m3/s on 9 m2 approach at 0.1333 m/s; power rho g Q h/eta over July.
    const lossUnder = (layerThickness: number) =>
      rackLoss(
        "meusburger",
        pumpedIntake.rack,
        { layerThickness, approachVelocity: 1.2 / 9 },
        { shape: 2.42, clark: 1 },
      );
    expect(assumed("hydraulics.bar-shape.rectangular")).toBe(2.42);
    const [line] = lossesOf(partOf(pumpedIntake, "rack"), layerOf(0.02), 6);
    const extra = lossUnder(0.02) - lossUnder(0);
    expect(extra).toBeGreaterThan(0);
    expect(relativeGap(line?.quantity ?? Number.NaN, pumpPower(1.2, extra, 0.75) * 31 * 24)).toBeLessThan(
      1e-9,
    );
    expect(line?.unitRate).toBe(0.08);
    expect(lossesOf(partOf(gravityIntake, "rack"), layerOf(0.02), 6)).toEqual([]);
  });
});

describe("the parts of a plant of three units", () => {
  const flow = [6, 8, 10, 12, 14, 15, 15, 14, 12, 10, 8, 3];
  const coolingWater = { ...plant.coolingWater, oxidantAllowed: true };
  const one: Hydropower = { ...plant, units: 1, flow, coolingWater };
  const three = { ...one, units: 3 };

  test.each(["rack", "penstock", "service-line"] as const)("are three times that of one: %s", (kind) => {
    const [single, triple] = [partOf(one, kind), partOf(three, kind)];
    expect(triple.count).toBe(3 * single.count);
    expect(triple.designFlow).toBeCloseTo(3 * single.designFlow, 12);
    expect(triple.oxidant?.flow).toEqual(single.oxidant?.flow.map((each) => 3 * each));
    const lost = (part: Component) => part.outage?.quantity(10, 6) ?? Number.NaN;
    expect(lost(single)).toBeGreaterThan(0);
    expect(lost(triple)).toBe(lost(single) * 3);
  });

  it("take treatments for the largest flow, and an oxidant for the need of cooling water", () => {
    expect(partOf(one, "penstock").designFlow).toBe(15);
    expect(partOf(three, "service-line").oxidant?.flow).toEqual(everyMonth(3 * 0.008));
    expect(partOf(plant, "service-line").oxidant).toBeUndefined();
  });

  it("lose in an outage the share of the month's energy whose water is lost, at most the whole month", () => {
    // By hand: 10 of 31 days of July, and a share of their water.
    const made = operatingYear(one, context).energy[6] ?? Number.NaN;
    const share = assumed("hydropower.outage-lost-share");
    const lost = (days: number) => partOf(one, "rack").outage?.quantity(days, 6) ?? Number.NaN;
    expect(relativeGap(lost(10), (made * 10 * share) / 31)).toBeLessThan(1e-12);
    expect(relativeGap(lost(50), made * share)).toBeLessThan(1e-12);
  });

  it("are derated by the water that is missing, up to the limit on it", () => {
    const part = partOf(one, "service-line");
    const made = operatingYear(one, context).energy[6] ?? Number.NaN;
    const missing = (thickness: number) =>
      (lossesOf(part, layerOf(thickness), 6)[0]?.quantity ?? Number.NaN) / made;
    const limit = assumed("hydropower.derating-limit");
    const thicknesses = Array.from({ length: 40 }, (_, step) => step / 1000);
    const isBroken = thicknesses.map((each) => brokenLimit(part, layerOf(each), 6) !== undefined);
    expect(isBroken).toEqual(thicknesses.map((each) => missing(each) > limit));
    expect(isBroken).toContain(true);
    expect(isBroken).toContain(false);
  });
});

describe("a plant under a lowered lake", () => {
  it("makes nothing while its intake stands dry", () => {
    // The lake stands below 95 m for all of January and for 27 of the 28 days of February (by hand).
    const dry = contextOf(drawnDownLake, 3);
    const high = { ...plant, elevation: 95 };
    const [item] = kindOf(high).cleanService?.(high, dry) ?? [];
    const { energy } = operatingYear(high, dry);
    expect(item?.quantity[0]).toBeCloseTo(0, 12);
    expect(relativeGap(item?.quantity[1] ?? Number.NaN, (-2 * (energy[1] ?? Number.NaN)) / 28)).toBeLessThan(
      1e-12,
    );
    expect(relativeGap(item?.quantity[6] ?? Number.NaN, -2 * (energy[6] ?? Number.NaN))).toBeLessThan(1e-12);
  });
});

describe("a cleaning", () => {
  it("has no line for what costs nothing", () => {
    const free = contextOf(productiveLake, 3, assumedWith({ "cleaning.rack.visit": 0 }));
    expect(
      cleaningOf("rack", 30, free)
        .work()
        .map(({ quantityKind }) => quantityKind),
    ).toEqual(["area"]);
  });
});

describe("a dock", () => {
  const heavy = { ...bareSurface, mass: 1000, thickness: 0.1 };
  const limitOf = (dock: typeof floatingDock) =>
    dockComponents(dock, context).map((hull) => brokenLimit(hull, heavy, 0))[0];

  it("is too heavy only where it floats and its spare buoyancy is known", () => {
    const { spareBuoyancy: _, ...unknown } = floatingDock;
    expect(limitOf(floatingDock)).toMatch(/weight/);
    expect(limitOf(unknown)).toBeUndefined();
    expect(limitOf({ ...fixedDock, spareBuoyancy: 1 })).toBeUndefined();
  });

  it("grows less where it hangs in the cold water below the thermocline", () => {
    const thickest = (depth: number, lake: Lake = productiveLake) => {
      const here = contextOf(lake, 5);
      const [hull] = dockComponents({ ...floatingDock, depth }, here);
      if (!hull) throw new Error("no hull");
      const layers = growLayers({ surface: here.growing(hull.surface), density: here.density }, here.growth);
      return Math.max(...layers.map(({ thickness }) => thickness));
    };
    expect(thickest(14)).toBeLessThan(0.9 * thickest(1));
    // Of one temperature from top to bottom, there is no such difference.
    const mixed = { ...productiveLake, deepTemperature: productiveLake.surfaceTemperature };
    expect(thickest(14, mixed)).toBe(thickest(1, mixed));
  });
});
