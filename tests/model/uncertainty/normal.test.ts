import { describe, expect, it, test } from "vitest";
import { normalChance } from "../../../src/model/uncertainty/normal.js";
import { normalQuantile } from "../../../src/model/uncertainty/normal-quantile.js";
import { relativeGap } from "../near.js";

describe("the normal distribution", () => {
  // scipy 1.17.1: norm.cdf(z)
  test.each([
    [-8, 6.22096057427174e-16],
    [-3.0001, 0.0013494549132607172],
    [-2.999, 0.0013543365337271057],
    [-1, 0.15865525393145707],
    [0.5, 0.6914624612740131],
    [2.9999, 0.998649658717045],
    [6, 0.9999999990134123],
  ])("holds below %d the chance %d", (z, chance) => {
    expect(relativeGap(normalChance(z), chance)).toBeLessThan(1e-13);
  });

  it("is even: what lies above z lies below -z, in the series, in the fraction and where they meet", () => {
    for (const z of [0, 0.3, 1.7, 2.999999, 3, 3.000001, 5]) {
      expect(normalChance(z) + normalChance(-z)).toBeCloseTo(1, 15);
    }
  });

  // scipy 1.17.1: norm.ppf(p); one in each of the three parts of the algorithm, on both sides.
  test.each([
    [1e-300, -37.0470962993612],
    [1e-20, -9.262340089798409],
    [1e-10, -6.361340902404056],
    [0.01, -2.3263478740408408],
    [0.25, -0.6744897501960817],
    [0.9, 1.2815515655446004],
    [0.975, 1.959963984540054],
    [0.999999, 4.753424308817087],
  ])("has the quantile of %d at %d", (p, z) => {
    expect(relativeGap(normalQuantile(p), z)).toBeLessThan(2e-15);
  });

  it("has the published check values of AS 241", () => {
    // Wichura 1988: PPND16(0.25), (0.001), (1e-20), from memory.
    expect(normalQuantile(0.25)).toBeCloseTo(-0.6744897501960817, 15);
    expect(normalQuantile(0.001)).toBeCloseTo(-3.090232306167814, 14);
    expect(relativeGap(normalQuantile(1e-20), -9.26234008979841)).toBeLessThan(1e-15);
  });

  it("gives the chance back from its quantile", () => {
    for (let p = 0.0005; p < 1; p += 0.0005) {
      expect(Math.abs(normalChance(normalQuantile(p)) - p)).toBeLessThan(2e-15);
    }
  });

  it.each([0, 1, -0.1, Number.NaN])("has no quantile of %d", (p) => {
    expect(() => normalQuantile(p)).toThrow(`chance is ${p}; allowed: above 0 and below 1`);
  });
});
