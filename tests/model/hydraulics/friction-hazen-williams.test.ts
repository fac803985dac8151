import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { pipeArea, pipeHeadLoss } from "../../../src/model/hydraulics/friction.js";
import {
  equivalentC,
  equivalentRoughness,
  hazenWilliamsFlow,
  hazenWilliamsLoss,
} from "../../../src/model/hydraulics/hazen-williams.js";
import { halfDigit, relativeGap } from "../near.js";

const pipe = { length: 1000, diameter: 0.3 };

describe("Hazen-Williams", () => {
  it("multiplies the loss by 1.975905 when C falls from 130 to 90 at the same flow", () => {
    // (130/90)^1.852, computed from the stated equation.
    const ratio = hazenWilliamsLoss(pipe, 0.1, 90) / hazenWilliamsLoss(pipe, 0.1, 130);
    expect(Math.abs(ratio - 1.975905)).toBeLessThanOrEqual(halfDigit(6));
  });

  it("passes 0.692308 of the flow at the same head when C falls from 130 to 90", () => {
    // 90/130, computed from the stated equation: loss depends on Q/C only.
    const share = 0.692308;
    const gap = relativeGap(hazenWilliamsLoss(pipe, 0.1 * share, 90), hazenWilliamsLoss(pipe, 0.1, 130));
    expect(gap).toBeLessThan(2e-6);
  });

  test.each([
    // Computed from D^-4.871, as the engine EPANET writes it; the exponent used here, 4.8704, differs by 0.01 %.
    [0.95, 1.283832],
    [0.9, 1.670647],
  ])("multiplies the loss as published when the bore shrinks to %d of itself", (bore, expected) => {
    const ratio =
      hazenWilliamsLoss({ ...pipe, diameter: 0.3 * bore }, 0.1, 130) / hazenWilliamsLoss(pipe, 0.1, 130);
    expect(relativeGap(ratio, expected)).toBeLessThan(1e-4);
  });

  test.each([
    // 10.67/D^4.8704 evaluated for 1000 m, 300 mm, 100 L/s: computed from the stated equation.
    [130, 6.423474],
    [100, 10.442225],
  ])("loses the computed head at C %d", (c, expected) => {
    expect(Math.abs(hazenWilliamsLoss(pipe, 0.1, c) - expected)).toBeLessThanOrEqual(halfDigit(6));
  });
});

describe("a pipe without flow", () => {
  it("has none where no head drives it, and no roughness that a flow could show", () => {
    // Limits of the formula: Q^1.852 is defined for flows forward alone; at no flow any roughness loses the same, none.
    for (const head of [0, -2]) expect(hazenWilliamsFlow({ ...pipe, minorLoss: 3 }, head, 120)).toBe(0);
    expect(equivalentRoughness(pipe, 120, { flow: 0, viscosity: 1e-6 })).toBe(0);
  });
});

describe("the equivalent C", () => {
  it("returns the C that made the loss", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 160, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 1e-3, max: 10, noNaN: true }),
        (c, diameter, flow) => {
          const sized = { length: 500, diameter };
          expect(relativeGap(equivalentC(sized, flow, hazenWilliamsLoss(sized, flow, c)), c)).toBeLessThan(
            1e-10,
          );
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });

  test.each([
    // Equivalents at 1.5 m bore and 1.7 m/s, nu 1e-6: computed from Colebrook-White and 10.67/D^4.8704 or its
    // variants, which move C by 0.1 at most.
    [0.0003, 129.6],
    [0.003, 98.5],
    [0.015, 76.1],
    [0.03, 66.5],
  ])("of a wall with sand roughness %d m is the computed one", (roughness, expected) => {
    const wide = { length: 1000, diameter: 1.5, roughness, minorLoss: 0 };
    const flow = 1.7 * pipeArea(1.5);
    const c = equivalentC(wide, flow, pipeHeadLoss(wide, flow, 1e-6));
    expect(Math.abs(c - expected)).toBeLessThanOrEqual(0.15);
  });

  it("falls as the flow rises on a wall of shells, so that no single C describes it", () => {
    // Fully rough Darcy-Weisbach loss grows with Q^2, Hazen-Williams with Q^1.852 (from the two equations).
    const shells = { length: 1000, diameter: 1.5, roughness: 0.02, minorLoss: 0 };
    const cAt = (flow: number) => equivalentC(shells, flow, pipeHeadLoss(shells, flow, 1e-6));
    expect(cAt(6)).toBeLessThan(cAt(3));
    expect(cAt(3)).toBeLessThan(cAt(1));
  });
});
