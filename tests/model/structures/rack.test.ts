import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockedShare, rackFace, reclamationLoss } from "../../../src/model/hydraulics/rack.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import type { Rack } from "../../../src/model/structures/inputs.js";
import { rackComponent, rackHeadLoss, rackVelocity } from "../../../src/model/structures/rack.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { brokenLimit } from "./limits-met.js";
import { lossesOf } from "./losses.js";

const rack: Rack = {
  width: 3,
  height: 2,
  barThickness: 0.01,
  clearSpacing: 0.04,
  barDepth: 0.05,
  barShape: "rectangular",
  angle: 90,
  headLossLimit: 0.1,
  velocityLimit: 0.9,
};
const rectangular = { shape: 2.42, clark: 1 };
const thicknesses = fc.double({ min: 0, max: 0.0199, noNaN: true });

describe("the state of a rack", () => {
  it("keeps the flow: velocity through the openings times their area", () => {
    fc.assert(
      fc.property(thicknesses, fc.double({ min: 0.01, max: 5, noNaN: true }), (thickness, flow) => {
        const open = (1 - blockedShare(rack, thickness)) * rackFace(rack);
        expect(relativeGap(rackVelocity(rack, thickness, flow) * open, flow)).toBeLessThan(1e-9);
      }),
      { seed: 161, numRuns: 200 },
    );
  });

  it("doubles the velocity when half of the opening is covered", () => {
    // A fifth of the face is bars; 10 mm on both sides leave half of each 40 mm gap.
    expect(rackVelocity(rack, 0.01, 3) / rackVelocity(rack, 0, 3)).toBeCloseTo(2, 12);
  });

  it("quadruples the loss when the flow doubles", () => {
    const once = rackHeadLoss(rack, 0.008, 1.2, rectangular);
    const twice = rackHeadLoss(rack, 0.008, 2.4, rectangular);
    expect(relativeGap(twice / once, 4)).toBeLessThan(1e-12);
  });

  it("is of the size that a second formula gives, clean and half blocked", () => {
    // Computed: at 20 % of the face blocked Meusburger 0.3025 on V against the Bureau of Reclamation's 0.45 on the net
    // velocity, 0.703 on V, a ratio of 0.43; at 50 % 2.42 against 0.975 x 4 = 3.9, a ratio of 0.62.
    const clean = rackHeadLoss(rack, 0, 6, rectangular) / reclamationLoss(0.8, 1);
    expect(clean).toBeCloseTo(0.3025 / (0.45 / 0.64), 6);
    const half = rackHeadLoss(rack, 0.0075, 6, rectangular);
    expect(blockedShare(rack, 0.0075)).toBeCloseTo(0.5, 12);
    expect(half / reclamationLoss(0.5, 1)).toBeCloseTo(2.42 / 3.9, 6);
  });

  it("passes nothing once the gaps are closed", () => {
    expect(blockedShare(rack, 0.02)).toBe(1);
    expect(rackHeadLoss(rack, 0.02, 1, rectangular)).toBe(Number.POSITIVE_INFINITY);
    expect(rackVelocity(rack, 0.02, 1)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("a rack in a structure", () => {
  const context = contextOf(productiveLake, 5, assumed);
  const heads: number[] = [];
  const componentOf = (of: Rack) =>
    rackComponent(
      {
        rack: of,
        elevation: 90,
        flow: everyMonth(3),
        headLost: () => (_, extraHead) => {
          heads.push(extraHead);
        },
      },
      context,
    );
  const component = componentOf(rack);
  const layerOf = (thickness: number): Layer => ({ ...bareSurface, thickness, mass: 1 });

  it("is grown over at the velocity between its clean bars", () => {
    // By hand: 3 m³/s through four fifths of 6 m².
    expect(component.surface.velocity[0]).toBeCloseTo(3 / 4.8, 12);
  });

  it("hands over the head lost beyond the clean rack's, at most up to the limit", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.05, noNaN: true }), (thickness) => {
        heads.length = 0;
        lossesOf(component, layerOf(thickness), 0);
        const [extra = Number.NaN] = heads;
        const clean = rackHeadLoss(rack, 0, 3, rectangular);
        expect(extra).toBeGreaterThanOrEqual(0);
        expect(extra).toBeLessThanOrEqual(rack.headLossLimit - clean + 1e-12);
      }),
      { seed: 162, numRuns: 100 },
    );
  });

  it("names the factor of its bars in the formulas that have one, in what it loses", () => {
    const named = (formula: Rack["formula"]) => {
      const names: string[] = [];
      const headLost = (ids: readonly string[]) => {
        names.push(...ids);
        return () => {};
      };
      rackComponent({ rack: { ...rack, formula }, elevation: 90, flow: everyMonth(3), headLost }, context);
      return names.filter((id) => id !== "growth.bulk-density");
    };
    expect(named(undefined)).toEqual(["hydraulics.bar-shape.rectangular"]);
    expect(named("clark")).toEqual(["hydraulics.clark-bar-factor.rectangular"]);
    expect(named("reclamation")).toEqual([]);
  });

  it("names the limit that is broken", () => {
    // Half of each gap gone is the limit (from memory, Design of Small Dams: half the area clogged).
    expect(brokenLimit(component, layerOf(0.001), 0)).toBeUndefined();
    const wide = componentOf({ ...rack, velocityLimit: 9, headLossLimit: 9 });
    expect(brokenLimit(wide, layerOf(0.0099), 0)).toBeUndefined();
    expect(brokenLimit(wide, layerOf(0.0101), 0)).toMatch(/gaps/);
    // 3 m3/s on 6 m2 approach at 0.5 m/s: 0.9 m/s once 55.6 % of the face is open, under 6.1 mm on each side.
    expect(brokenLimit(component, layerOf(0.006), 0)).toBeUndefined();
    expect(brokenLimit(component, layerOf(0.0062), 0)).toMatch(/velocity/);
  });
});
