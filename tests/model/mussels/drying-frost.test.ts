import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { dryDose, dryingParameters, frostKillHours, survival } from "../../../src/model/mussels/drying.js";
import { assumed } from "../assumptions.js";

const zebra = dryingParameters("zebra", assumed);

// Payne 1992, as cited in the Columbia River Basin response plan: single mussels dead in 2 days at 0 and -1.5
// degrees, in 5-7 hours at -3, in less than 2 hours at -10; clusters take longer (no factor given).
describe("frost", () => {
  test.each([
    [0, 48, 48],
    [-1.5, 48, 48],
    [-3, 5, 7],
    [-10, 0, 2],
  ])("of %d degrees kills a single mussel in the published time", (temperature, least, most) => {
    const hours = frostKillHours(temperature, zebra);
    expect(hours).toBeGreaterThanOrEqual(least - 1e-9);
    expect(hours).toBeLessThanOrEqual(most + 1e-9);
  });

  it("takes 6 hours at -3 degrees, the middle of the published range", () => {
    expect(frostKillHours(-3, zebra)).toBeCloseTo(6, 10);
  });

  it("takes, between two published temperatures, the time between theirs on the logarithm", () => {
    // By hand: half way from -1.5 (48 h) to -3 degrees (6 h) the geometric mean, 16.97 h; colder than the table its last.
    expect(frostKillHours(-2.25, zebra)).toBeCloseTo(Math.sqrt(48 * 6), 9);
    expect(frostKillHours(-2, zebra)).toBeCloseTo(48 ** (2 / 3) * 6 ** (1 / 3), 9);
    expect(frostKillHours(-6.5, zebra)).toBeCloseTo(Math.sqrt(6 * frostKillHours(-10, zebra)), 9);
    expect(frostKillHours(-25, zebra)).toBe(frostKillHours(-10, zebra));
  });

  it("leaves the stated share alive at its killing time, whatever the size", () => {
    // From the definition of the survival at the published time; no drying beside it.
    for (const length of [5, 14, 30])
      expect(survival({ drying: 0, frost: 1 }, length, zebra)).toBeCloseTo(zebra.frostSurvival, 12);
  });

  it("does not kill by itself above freezing", () => {
    expect(frostKillHours(0.01, zebra)).toBe(Number.POSITIVE_INFINITY);
    expect(dryDose(1000, { temperature: 4, humidity: 0.9 }, zebra).frost).toBe(0);
  });

  it("is never slower where it is colder", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (temperature, colder) => {
          const mild = frostKillHours(temperature, zebra);
          expect(frostKillHours(temperature - colder, zebra)).toBeLessThanOrEqual(mild);
        },
      ),
      { seed: 71, numRuns: 500 },
    );
  });

  it("takes longer in a cluster, by the cluster factor, and then leaves next to none", () => {
    expect(zebra.clusterFactor).toBeGreaterThanOrEqual(1);
    for (const temperature of [0, -1.5, -3, -10]) {
      const single = frostKillHours(temperature, zebra);
      const damp = { temperature, humidity: 0.98 };
      const inCluster = dryDose(single * zebra.clusterFactor, damp, zebra);
      expect(inCluster.frost).toBeCloseTo(1, 10);
      // Dead is taken as 1 in 100 alive at the published time.
      expect(survival(inCluster, 14, zebra)).toBeLessThanOrEqual(0.01);
      const sooner = dryDose(single, damp, zebra);
      expect(survival(sooner, 14, zebra)).toBeGreaterThanOrEqual(survival(inCluster, 14, zebra));
    }
  });

  it("of a winter drawdown clears a littoral in five days at -3.6 to -7.2 degrees", () => {
    // Leuven and others 2014, River Nederrijn: mass death in 5 days at daily means of -3.6 to -7.2 degrees. The
    // abstract gives no percentage; below 5 % alive is taken as mass death.
    for (const temperature of [-3.6, -5.4, -7.2]) {
      for (const length of [5, 14, 24]) {
        const dose = dryDose(120, { temperature, humidity: 0.8 }, zebra);
        expect(survival(dose, length, zebra)).toBeLessThan(0.05);
      }
    }
  });

  it("kills at -3 degrees what outlives the same hours at +3", () => {
    const hours = 36;
    const cold = survival(dryDose(hours, { temperature: -3, humidity: 0.9 }, zebra), 20, zebra);
    const cool = survival(dryDose(hours, { temperature: 3, humidity: 0.9 }, zebra), 20, zebra);
    expect(cold).toBeLessThan(0.05);
    expect(cool).toBeGreaterThan(0.95);
  });
});
