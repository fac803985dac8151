import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { frictionFactor } from "../../../src/model/hydraulics/friction.js";
import { halfDigit, relativeGap } from "../near.js";

// Reynolds number, relative roughness, Colebrook-White factor, Swamee-Jain factor. Both factors were computed
// from the stated equations: 1/sqrt(f) = -2 log10((e/D)/3.7 + 2.51/(Re sqrt f)), iterated to 1e-10 (Colebrook
// 1939), and f = 0.25/[log10((e/D)/3.7 + 5.74/Re^0.9)]^2 (Swamee and Jain 1976). Printed to eight decimals.
const table: ReadonlyArray<readonly [number, number, number, number]> = [
  [4e3, 0, 0.03990701, 0.04055149],
  [1e4, 0, 0.03088295, 0.0309721],
  [1e5, 0, 0.01798977, 0.01786258],
  [1e6, 0, 0.01164504, 0.01160648],
  [1e7, 0, 0.00810267, 0.00814235],
  [1e8, 0, 0.00594047, 0.00602589],
  [1e4, 1e-3, 0.03238181, 0.03266535],
  [1e5, 1e-4, 0.01851387, 0.01845245],
  [1e5, 1e-3, 0.02217454, 0.02234241],
  [1e5, 1e-2, 0.03850354, 0.03875093],
  [1e6, 1e-5, 0.01186954, 0.01185316],
  [1e6, 1e-4, 0.01344144, 0.0135077],
  [1e6, 1e-3, 0.01994347, 0.02002924],
  [1e6, 1e-2, 0.03796474, 0.03801188],
  [1e7, 1e-4, 0.01216608, 0.01221356],
  [1e7, 1e-3, 0.01966705, 0.01968617],
  [1e7, 0.02, 0.04864142, 0.04864741],
  [1e8, 0.05, 0.0715509, 0.07155156],
  [2e6, 0.015, 0.04371303, 0.04373743],
  [2e6, 0.036, 0.06177672, 0.06179644],
];

describe("the turbulent friction factor", () => {
  it.each(table)(
    "solves Colebrook-White at Re %d and e/D %d to the printed digits",
    (re, rough, expected) => {
      expect(Math.abs(frictionFactor(re, rough) - expected)).toBeLessThanOrEqual(halfDigit(8));
    },
  );

  it("agrees with the explicit form within 1 % from Re 1e4 to 1e7", () => {
    // The explicit form's stated accuracy (Swamee and Jain 1976, from memory).
    const inside = table.filter(([re]) => re >= 1e4 && re <= 1e7);
    expect(inside.length).toBe(17);
    for (const [re, rough, , explicit] of inside) {
      expect(relativeGap(explicit, frictionFactor(re, rough))).toBeLessThan(0.01);
    }
  });

  it("satisfies the implicit equation that it solves to 1e-12 in 1/sqrt(f)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3.7, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (logRe, rough) => {
          const re = 10 ** logRe;
          const factor = frictionFactor(re, rough);
          const right = -2 * Math.log10(rough / 3.7 + 2.51 / (re * Math.sqrt(factor)));
          expect(Math.abs(1 / Math.sqrt(factor) - right)).toBeLessThan(1e-12);
        },
      ),
      { seed: 1939, numRuns: 300 },
    );
  });

  it("rises with the roughness and falls with the Reynolds number", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3.7, max: 7, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (logRe, rough) => {
          const re = 10 ** logRe;
          expect(frictionFactor(re, rough + 0.001)).toBeGreaterThan(frictionFactor(re, rough));
          expect(frictionFactor(re * 2, rough)).toBeLessThan(frictionFactor(re, rough));
        },
      ),
      { seed: 1944, numRuns: 200 },
    );
  });
});

describe("the friction factor of slow water", () => {
  // f = 64/Re, the Hagen-Poiseuille law (from memory).
  test.each([10, 100, 640, 1600, 2000])("is 64/Re at Re %d, whatever the roughness", (re) => {
    expect(frictionFactor(re, 0)).toBeCloseTo(64 / re, 12);
    expect(frictionFactor(re, 0.03)).toBeCloseTo(64 / re, 12);
  });

  it("runs straight from one law to the other between Re 2000 and 4000", () => {
    // Half way by the stated rule: the mean of 64/2000 and Colebrook-White at Re 4000, smooth: 0.03990701 (computed).
    expect(Math.abs(frictionFactor(3000, 0) - (0.032 + 0.03990701) / 2)).toBeLessThanOrEqual(halfDigit(8));
  });

  test.each([0, 0.001, 0.03])("joins its neighbours without a step where e/D is %d", (rough) => {
    expect(frictionFactor(2000 + 1e-6, rough)).toBeCloseTo(frictionFactor(2000, rough), 8);
    expect(frictionFactor(4000 - 1e-6, rough)).toBeCloseTo(frictionFactor(4000, rough), 8);
  });
});
