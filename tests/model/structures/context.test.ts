import { describe, expect, it } from "vitest";
import { densityShare, populationParameters } from "../../../src/model/mussels/population.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";

// Calcium of 24 mg/L is moderate to Whittier and others 2008.
const moderate = { ...productiveLake, chemistry: { calcium: 24 } };

describe("the density that settles a lake's surfaces", () => {
  const context = contextOf(moderate, 10, assumed);
  const weight = assumed("suitability.weight.moderate");

  it("is the lake-wide share of capacity at mid-month times the lake's suitability, to a ten-thousandth", () => {
    const parameters = populationParameters(moderate, assumed);
    expect(context.density).toHaveLength(120);
    for (const month of [0, 11, 40, 119]) {
      const share = densityShare((month + 0.5) / 12, parameters);
      expect(Math.abs((context.density[month] ?? Number.NaN) - weight * share)).toBeLessThan(1e-4 * weight);
    }
  });

  it("is that share exactly while it is still rising", () => {
    const share = densityShare(11.5 / 12, populationParameters(moderate, assumed));
    expect(context.density[11]).toBeCloseTo(weight * share, 12);
  });

  it("is at its highest what plans are chosen for", () => {
    expect(context.matureDensity).toBe(Math.max(...context.density));
    expect(context.matureDensity).toBeLessThanOrEqual(weight);
  });

  it("has its highest before a decline, where one is chosen", () => {
    const declining = assumedWith({ "population.later-over-peak": 0.15, "population.decline-years": 1 });
    const { density, matureDensity } = contextOf(moderate, 15, declining);
    expect(density.at(-1)).toBeLessThan(matureDensity / 4);
  });
});

describe("the longest dry run of a place", () => {
  const context = contextOf(drawnDownLake, 5, assumed);

  it("is that of its elevation, and none where it floats", () => {
    // By hand: below 95 m from New Year's Day to 27 February, 58 days; at 95 m itself on the 28th.
    expect(context.longestDryRun({ at: "elevation", elevation: 95 })).toEqual({ startDay: 0, days: 58 });
    expect(context.longestDryRun({ at: "elevation", elevation: 90 }).days).toBe(0);
    expect(context.longestDryRun({ at: "floating", depth: 1 }).days).toBe(0);
  });

  it("is the longest of the year's, in whichever order they come, and the first of two as long", () => {
    const lowered = (first: number, second: number) =>
      contextOf(
        {
          ...productiveLake,
          drawdown: [
            { dayOfYear: 0, elevation: 100 },
            { dayOfYear: 59, elevation: 100 },
            { dayOfYear: 60, elevation: 90 },
            { dayOfYear: 60 + first, elevation: 90 },
            { dayOfYear: 61 + first, elevation: 100 },
            { dayOfYear: 199, elevation: 100 },
            { dayOfYear: 200, elevation: 90 },
            { dayOfYear: 200 + second, elevation: 90 },
            { dayOfYear: 201 + second, elevation: 100 },
          ],
        },
        3,
      ).longestDryRun({ at: "elevation", elevation: 95 });
    // By hand: below 95 m from the first day at 90 m to the last, both counted.
    expect(lowered(40, 20)).toEqual({ startDay: 60, days: 41 });
    expect(lowered(20, 40)).toEqual({ startDay: 200, days: 41 });
    expect(lowered(40, 40)).toEqual({ startDay: 60, days: 41 });
  });
});

describe("the months of settlement", () => {
  it("begin at the temperature itself", () => {
    // Quagga from 8 °C on, the planning value.
    const warm = [5, 6, 7.9, 8, 12, 15, 18, 18, 14, 8, 7.9, 6];
    const { spawningMonths } = contextOf({ ...productiveLake, surfaceTemperature: warm }, 1);
    expect(spawningMonths).toEqual([3, 4, 5, 6, 7, 8, 9]);
  });
});
