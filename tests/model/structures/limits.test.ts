import { describe, expect, it, test } from "vitest";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import type { Component } from "../../../src/model/structures/component.js";
import type { Intake } from "../../../src/model/structures/inputs.js";
import type { Structure } from "../../../src/model/structures/kinds.js";
import { NearestLimit } from "../../../src/model/structures/limits.js";
import { barFactors, rackHeadLoss, rackVelocity } from "../../../src/model/structures/rack.js";
import { serviceShare } from "../../../src/model/structures/small-line.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { floatingDock, gravityIntake, plant, sealWater } from "../study.js";
import { brokenLimit } from "./limits-met.js";

const layerOf = (thickness: number, mass = 2): Layer => ({
  ...bareSurface,
  cover: 2,
  lengthMm: thickness * 1000,
  thickness,
  mass,
});
const context = contextOf(productiveLake, 3);

function partOf(structure: Structure, kind: Component["kind"], source = assumed): Component {
  const found = componentsOf(structure, contextOf(productiveLake, 3, source)).find(
    (each) => each.kind === kind,
  );
  if (!found) throw new Error(`no ${kind}`);
  return found;
}

describe("the nearest of several limits", () => {
  it("is the first of two that are as near, and of a later month once it is asked anew", () => {
    const [first, second] = ["first", "second"].map((broken) => ({ broken, assumptionIds: [] }) as const);
    if (!first || !second) throw new Error("two limits");
    const nearest = new NearestLimit();
    nearest.meet(first, 1, 2);
    nearest.meet(second, 1, 2);
    expect(nearest.limit).toBe(first);
    nearest.meet(second, 1.5, 2);
    expect([nearest.limit, nearest.load]).toEqual([second, 0.75]);
    nearest.clear();
    expect([nearest.limit.broken, nearest.load]).toEqual(["", 0]);
  });
});

describe("a limit that is just met is kept, and a little beyond it is broken", () => {
  // The limit is set to what the layer does, worked out beside the part.
  const thickness = 0.01;
  const layer = layerOf(thickness);
  const { rack } = gravityIntake;
  const headLoss = rackHeadLoss(rack, thickness, 1.2, barFactors(rack, context));
  const throughVelocity = rackVelocity(rack, thickness, 1.2);
  const withRack = (changes: Partial<Intake["rack"]>): Intake => ({
    ...gravityIntake,
    rack: { ...rack, headLossLimit: 9, velocityLimit: 9, ...changes },
  });
  const july = 6;

  test.each<[string, (limit: number) => Component, number]>([
    ["head loss of a rack", (headLossLimit) => partOf(withRack({ headLossLimit }), "rack"), headLoss],
    [
      "velocity through a rack",
      (velocityLimit) => partOf(withRack({ velocityLimit }), "rack"),
      throughVelocity,
    ],
    [
      // By hand: 10 mm on either side close a third of 60 mm.
      "share of its gaps closed",
      (limit) => partOf(withRack({}), "rack", assumedWith({ "rack.gap-closed-limit": limit })),
      (2 * thickness) / rack.clearSpacing,
    ],
    [
      "thickness in a conduit",
      (limit) => partOf(gravityIntake, "conduit", assumedWith({ "conduit.largest-layer": limit })),
      thickness,
    ],
    [
      // By hand: the submerged share of 2 kg/m2.
      "weight on a dock",
      (spareBuoyancy) => partOf({ ...floatingDock, spareBuoyancy }, "hull"),
      2 * assumed("dock.submerged-share"),
    ],
    [
      "shortage of a service line",
      (limit) => partOf(sealWater, "service-line", assumedWith({ "service-line.shortage-limit": limit })),
      1 - serviceShare(sealWater, context)(layer),
    ],
    [
      "derating of a unit",
      (limit) => partOf(plant, "service-line", assumedWith({ "hydropower.derating-limit": limit })),
      1 - serviceShare(plant.coolingWater, context)(layer),
    ],
  ])("%s", (_name, withLimit, met) => {
    expect(met).toBeGreaterThan(0);
    expect(brokenLimit(withLimit(met), layer, july)).toBeUndefined();
    expect(brokenLimit(withLimit(met * (1 - 1e-9)), layer, july)).toBeDefined();
  });
});
