import { describe, expect, test } from "vitest";
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
