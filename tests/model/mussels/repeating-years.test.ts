import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { killedByYear } from "../../../src/model/mussels/growth.js";
import { settledMonth } from "../../../src/model/mussels/population.js";
import { productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { growLayers, growth, stillSurface } from "./growing.js";

/** Drawn down for twelve days under cool, damp air: part of the mussels lives on, and years do not repeat at once. */
const mild = (startDay: number): Lake => ({
  ...productiveLake,
  drawdown: [
    { dayOfYear: startDay - 1, elevation: 100 },
    { dayOfYear: startDay, elevation: 90 },
    { dayOfYear: startDay + 11, elevation: 90 },
    { dayOfYear: startDay + 12, elevation: 100 },
  ],
  airTemperature: everyMonth(5),
  humidity: everyMonth(0.9),
});
const hard = (startDay: number): Lake => ({ ...mild(startDay), airTemperature: everyMonth(-12) });

describe("a year after one whose exposure killed all, in a settled lake", () => {
  it("is taken for the one before and not grown", () => {
    // Settled from the second year on, in whose January nobody is left: the fourth year is like the third.
    const surface = stillSurface({ at: "elevation", elevation: 95 }, hard(5));
    const read = new Set<number>();
    const values = Array.from({ length: 144 }, (_, month) => (month < 12 ? 0.5 : 1));
    const density = new Proxy(values, {
      get: (list, name) => {
        if (typeof name === "string" && /^\d+$/.test(name)) read.add(Number(name));
        return Reflect.get(list, name);
      },
    });
    const killed = killedByYear({ surface, density, settled: 12 }, growth);
    expect(Math.max(...read)).toBe(35);
    expect(killed.slice(3)).toEqual(Array<number>(9).fill(killed[2] ?? Number.NaN));
    expect(killed[2]).toBeGreaterThan(killed[1] ?? Number.NaN);
  });
});

describe("what dry runs kill in each year is the sum of its months", () => {
  const lakes = [5, 60, 150, 240, 345].flatMap((start) => [
    [`mild from day ${start}`, mild(start)] as const,
    [`hard from day ${start}`, hard(start)] as const,
  ]);
  const rises = [0, 11, 12, 13, 30];

  test.each(lakes.flatMap(([name, lake]) => rises.map((rise) => [name, rise, lake] as const)))(
    "%s, at a density that has settled after %d months",
    (_name, rise, lake) => {
      // The other route grows every month of all years.
      const surface = stillSurface({ at: "elevation", elevation: 95 }, lake);
      const density = Array.from({ length: 144 }, (_, month) => Math.min(1, (month + 1) / (rise + 1)));
      const killed = killedByYear({ surface, density, settled: settledMonth(density) }, growth);
      const layers = growLayers({ surface, density }, growth);
      const sums = killed.map((_, year) =>
        layers.slice(12 * year, 12 * year + 12).reduce((sum, each) => sum + each.killed, 0),
      );
      expect(killed).toHaveLength(12);
      expect(killed).toEqual(sums.map((sum) => expect.closeTo(sum, 6)));
      expect(Math.max(...killed)).toBeGreaterThan(0.1);
    },
  );
});
