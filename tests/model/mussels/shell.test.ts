import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { degreeDays } from "../../../src/model/lake/temperature.js";
import { grownLengthMm, roomLeft, shellParameters, wetMassG } from "../../../src/model/mussels/shell.js";
import { assumed } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { relativeGap } from "../near.js";

const shell = shellParameters(assumed);
const grownAfter = (lengthMm: number, degreeDays: number) =>
  grownLengthMm(lengthMm, roomLeft(degreeDays, shell), shell);

describe("the wet mass of a mussel", () => {
  test.each([
    // Kehne 2022, ln W(g) = -9.2964 + 3.0998 ln L(mm), Lake Bemidji; computed from it and rounded to the digits
    // shown. The natural logarithm is inferred: base 10 would give micrograms.
    [5, 0.0135, 0.00005],
    [10, 0.115, 0.0005],
    [15, 0.406, 0.0005],
    [20, 0.99, 0.0055],
    [25, 1.98, 0.005],
    [30, 3.48, 0.005],
  ])("at %d mm is the regression's", (length, expected, rounding) => {
    expect(Math.abs(wetMassG(length, shell) - expected)).toBeLessThanOrEqual(rounding);
  });

  it("grows by 8.57 when the length doubles, at any length", () => {
    // 2^3.0998 = 8.57, from the exponent of Kehne 2022.
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 25, noNaN: true }), (length) => {
        const ratio = wetMassG(2 * length, shell) / wetMassG(length, shell);
        expect(relativeGap(ratio, 8.57)).toBeLessThan(0.001);
      }),
      { seed: 41, numRuns: 100 },
    );
  });

  it("gives the published loads of a square metre", () => {
    // 30,000 of 10 mm: 3.5 kg; 10,000 of 20 mm: 9.9 kg (arithmetic on Kehne 2022).
    expect((30_000 * wetMassG(10, shell)) / 1000).toBeCloseTo(3.5, 1);
    expect((10_000 * wetMassG(20, shell)) / 1000).toBeCloseTo(9.9, 1);
  });
});

describe("the growth of a shell", () => {
  const lengths = fc.double({ min: 0.25, max: 29.9, noNaN: true });
  const warmth = fc.double({ min: 0, max: 4000, noNaN: true });

  it("never passes the maximum length nor shrinks", () => {
    fc.assert(
      fc.property(lengths, warmth, (length, degreeDays) => {
        const grown = grownAfter(length, degreeDays);
        expect(grown).toBeGreaterThanOrEqual(length - 1e-12);
        expect(grown).toBeLessThanOrEqual(shell.maximumMm);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it("depends on the warmth alone, not on how it is cut into months", () => {
    fc.assert(
      fc.property(lengths, warmth, warmth, (length, first, second) => {
        const inTwo = grownAfter(grownAfter(length, first), second);
        expect(inTwo).toBeCloseTo(grownAfter(length, first + second), 10);
      }),
      { seed: 43, numRuns: 200 },
    );
  });

  it("stands still in the cold", () => {
    expect(grownAfter(12, 0)).toBe(12);
  });

  it("halves the way to the maximum in ln 2 over the rate", () => {
    // von Bertalanffy in degree-days, L = Lmax - (Lmax - L0) exp(-k DD): computed from the stated equation.
    const half = Math.LN2 / shell.ratePerDegreeDay;
    expect(grownAfter(10, half)).toBeCloseTo((10 + shell.maximumMm) / 2, 10);
  });

  it("reaches 10 to 25 mm in its first year in a productive lake", () => {
    // Nearly 25 mm in year 1 in Lake St. Clair, the upper end (Mackie 1993, as cited by the Colorado Water
    // Conservation Board); 10-20 mm in many lakes (from memory).
    const temperatures = productiveLake.surfaceTemperature;
    const warmthOfYear = temperatures.reduce(
      (sum, mean, month) => sum + degreeDays(mean, shell.baseTemperature, month),
      0,
    );
    const length = grownAfter(shell.settlementMm, warmthOfYear);
    expect(length).toBeGreaterThan(10);
    expect(length).toBeLessThan(25);
  });
});
