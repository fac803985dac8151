import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  barSurfaceRatio,
  blockedShare,
  clarkLoss,
  kirschmerLoss,
  meusburgerLoss,
  rackFace,
  rackLoss,
  reclamationLoss,
} from "../../../src/model/hydraulics/rack.js";
import type { Rack, RackFormula } from "../../../src/model/structures/inputs.js";
import { assumed } from "../assumptions.js";
import { halfDigit, relativeGap } from "../near.js";

describe("Kirschmer's loss, on the approach velocity", () => {
  it("is the published worksheet's 0.0037935 m", () => {
    // Worksheet after Dandekar, Water Power Engineering, p. 273: V 0.6 m/s, t 20 mm, b 100 mm, 75 degrees,
    // K 1.83. Printed 0.0037935 m.
    const rack = { barThickness: 0.02, clearSpacing: 0.1, angle: 75 };
    expect(Math.abs(kirschmerLoss(rack, 1.83, 0.6) - 0.0037935)).toBeLessThanOrEqual(halfDigit(7));
  });

  test.each([
    // Computed from h = kF (s/b)^(4/3) sin(alpha) V^2/2g.
    { factor: 2.42, bar: 0.01, gap: 0.05, velocity: 1, angle: 70, expected: 0.0135563, decimals: 7 },
    { factor: 1.79, bar: 0.01, gap: 0.05, velocity: 1, angle: 70, expected: 0.0100272, decimals: 7 },
    { factor: 2.42, bar: 0.012, gap: 0.1, velocity: 0.8, angle: 60, expected: 0.0040464, decimals: 8 },
  ])("is $expected m for factor $factor at $velocity m/s", (row) => {
    const rack = { barThickness: row.bar, clearSpacing: row.gap, angle: row.angle };
    const loss = kirschmerLoss(rack, row.factor, row.velocity);
    expect(Math.abs(loss - row.expected)).toBeLessThanOrEqual(halfDigit(row.decimals));
  });
});

describe("Meusburger's loss, on the approach velocity", () => {
  test.each([
    // Computed from xi = kF (p/(1-p))^1.5 sin(alpha) (Meusburger 2002, from memory), kF 2.42, 70 degrees, 1 m/s.
    [0.1, 0.00429278, 8],
    [0.2, 0.0144881, 7],
    [0.3, 0.032519, 7],
    [0.4, 0.0630907, 7],
    [0.5, 0.115905, 6],
    [0.6, 0.212931, 6],
  ])("at %d of the face blocked is %d m", (share, expected, decimals) => {
    const loss = meusburgerLoss({ blockedShare: share, angle: 70 }, 2.42, 1);
    expect(Math.abs(loss - expected)).toBeLessThanOrEqual(halfDigit(decimals));
  });

  it("is of the size of other formulas for a clean rack, a fifth of the face blocked by bars", () => {
    // Vertical rack, rectangular bars, coefficient on V: Meusburger 0.3025, Kirschmer 0.381 at s/b 0.25
    // (computed from the two equations).
    const head = 1 / (2 * 9.81);
    const meusburger = meusburgerLoss({ blockedShare: 0.2, angle: 90 }, 2.42, 1) / head;
    const kirschmer = kirschmerLoss({ barThickness: 1, clearSpacing: 4, angle: 90 }, 2.42, 1) / head;
    expect(Math.abs(meusburger - 0.3025)).toBeLessThanOrEqual(halfDigit(4));
    expect(Math.abs(kirschmer - 0.381)).toBeLessThanOrEqual(halfDigit(3));
  });
});

describe("the Bureau of Reclamation's loss", () => {
  test.each([
    // K = 1.45 - 0.45 R - R^2 on the velocity through the NET area (Design of Small Dams, from memory);
    // the values are computed from it.
    [1, 0],
    [0.9, 0.235],
    [0.8, 0.45],
    [0.7, 0.645],
    [0.6, 0.82],
    [0.5, 0.975],
    [0.4, 1.11],
    [0.3, 1.225],
  ])("has the coefficient for a net share of %d", (net, expected) => {
    const netVelocity = 1.7;
    const loss = reclamationLoss(net, netVelocity * net);
    expect(loss / (netVelocity ** 2 / (2 * 9.81))).toBeCloseTo(expected, 12);
  });

  test.each([
    // Clean rack with R 0.8 approached at 0.8 m/s; a quarter, half and three quarters of its net area blocked.
    // Computed from the stated equation.
    [0.8, 0.0229358, 7],
    [0.6, 0.0743006, 7],
    [0.4, 0.2263, 6],
    [0.2, 1.07645, 5],
  ])("takes the approach velocity and divides it by the net share of %d", (net, expected, decimals) => {
    expect(Math.abs(reclamationLoss(net, 0.8) - expected)).toBeLessThanOrEqual(halfDigit(decimals));
  });
});

describe("Clark, Tsikata and Haresign's loss, on the approach velocity", () => {
  it("has the coefficient 0.2972 and loses 0.0151478 m where a fifth is blocked, at 1 m/s", () => {
    // xi = 7.43 eta p^2 (2010, J. Hydraul. Res. 48(1):113-118, from memory); computed from it with eta 1.
    expect(Math.abs(clarkLoss(0.2, 1, 1) - 0.0151478)).toBeLessThanOrEqual(halfDigit(7));
    expect(clarkLoss(0.2, 1, 1) * 2 * 9.81).toBeCloseTo(0.2972, 10);
    expect(clarkLoss(0.2, 0.75, 2)).toBeCloseTo(3 * clarkLoss(0.2, 1, 1), 12);
  });
});

const rack: Rack = {
  width: 4,
  height: 3,
  barThickness: 0.01,
  clearSpacing: 0.05,
  barDepth: 0.06,
  barShape: "rectangular",
  angle: 75,
  headLossLimit: 0.2,
  velocityLimit: 1,
};

describe("a layer on a rack", () => {
  it("closes each gap from both sides", () => {
    // Open share by geometry: gap less twice the layer, over bar and gap.
    expect(blockedShare(rack, 0)).toBeCloseTo(1 / 6, 12);
    expect(blockedShare(rack, 0.0125)).toBeCloseTo(1 - 0.025 / 0.06, 12);
    expect(blockedShare(rack, 0.025)).toBe(1);
    expect(blockedShare(rack, 0.1)).toBe(1);
  });

  it("doubles the velocity and quadruples an orifice's loss when half of the opening is gone", () => {
    // Velocity 1/(1-B), loss 1/(1-B)^2 at B = 0.5: from continuity.
    const open = 1 - blockedShare(rack, 0);
    const half = 1 - blockedShare(rack, rack.clearSpacing / 4);
    expect(open / half).toBeCloseTo(2, 12);
    expect((open / half) ** 2).toBeCloseTo(4, 12);
  });

  it("never lowers the loss of head, by either formula", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        fc.double({ min: 1e-5, max: 0.004, noNaN: true }),
        (thickness, more) => {
          const before = blockedShare(rack, thickness);
          const after = blockedShare(rack, thickness + more);
          expect(after).toBeGreaterThan(before);
          const at = (share: number) => meusburgerLoss({ blockedShare: share, angle: 75 }, 2.42, 0.5);
          expect(at(after)).toBeGreaterThan(at(before));
          expect(reclamationLoss(1 - after, 0.5)).toBeGreaterThan(reclamationLoss(1 - before, 0.5));
        },
      ),
      { seed: 9, numRuns: 200 },
    );
  });

  it("grows on both sides, front and back of each bar", () => {
    // A bar of 10 by 60 mm has a perimeter of 140 mm on each 60 mm of face.
    expect(barSurfaceRatio(rack)).toBeCloseTo(0.14 / 0.06, 12);
    expect(rackFace(rack)).toBe(12);
  });
});

describe("the loss of a rack by a chosen formula", () => {
  const factors = { shape: 2.42, clark: 1 };
  const upright = { ...rack, angle: 90 };
  const coefficient = (formula: RackFormula, layerThickness: number) =>
    rackLoss(formula, upright, { layerThickness, approachVelocity: 1 }, factors) * 2 * 9.81;

  test.each([
    // 10 mm bars under 5 mm on each side: bars of 20 mm, gaps of 40 mm, a third blocked. Worked from the equations.
    ["meusburger", 2.42 * 0.5 ** 1.5],
    ["kirschmer", 2.42 * 0.5 ** (4 / 3)],
    ["clark", 7.43 / 9],
    ["reclamation", (1.45 - 0.3 - 4 / 9) * 2.25],
  ] as const)("is that of %s with the layer on bars and gaps", (formula, expected) => {
    expect(coefficient(formula, 0.005)).toBeCloseTo(expected, 10);
  });

  test.each(["meusburger", "kirschmer", "clark", "reclamation"] as const)(
    "rises with the layer by %s, and is boundless through closed gaps",
    (formula) => {
      const losses = [0, 0.005, 0.01, 0.015, 0.02, 0.024].map((layer) => coefficient(formula, layer));
      expect(losses).toEqual([...losses].sort((a, b) => a - b));
      expect(coefficient(formula, 0.025)).toBe(Number.POSITIVE_INFINITY);
    },
  );
});

describe("the bar shape factors", () => {
  test.each([
    // Kirschmer's factors: 1.83 read in the worksheet after Dandekar, the others from memory.
    ["rectangular", 2.42],
    ["rounded-upstream", 1.83],
    ["rounded-both", 1.67],
    ["round", 1.79],
  ])("hold the published factor of a %s bar", (shape, expected) => {
    expect(relativeGap(assumed(`hydraulics.bar-shape.${shape}`), expected)).toBeLessThan(1e-12);
  });
});
