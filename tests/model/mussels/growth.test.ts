import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { killedByYear } from "../../../src/model/mussels/growth.js";
import { settledMonth } from "../../../src/model/mussels/population.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { relativeGap } from "../near.js";
import { growLayers, growth, plain, stillSurface } from "./growing.js";

const surfaceAt = (elevation: number, lake: Lake = productiveLake) =>
  stillSurface({ at: "elevation", elevation }, lake);

const [june, july, november] = [5, 6, 10];

describe("mussels that settle in one month alone", () => {
  const density = Array.from({ length: 40 }, (_, month) => (month === june ? 0.3 : 0));
  const layers = growLayers({ surface: surfaceAt(95), density }, growth);

  it("are as many as the density lets settle on a bare surface", () => {
    // n D s with nothing in the way: 4,000 a month x 0.3 in the season, at full depth and in still water.
    expect(layers[june]?.number).toBeCloseTo(4000 * 0.3, 9);
    expect(layers.slice(0, june).every(({ number }) => number === 0)).toBe(true);
  });

  it("thin out by the yearly mortality: N exp(-m/12) after a month", () => {
    for (const later of [1, 7, 12, 30]) {
      const left = (layers[june + later]?.number ?? Number.NaN) / (layers[june]?.number ?? Number.NaN);
      expect(relativeGap(left, Math.exp((-growth.yearlyMortality * later) / 12))).toBeLessThan(1e-12);
    }
  });
});

describe("mussels that settle on others", () => {
  it("have the share of the space that the others leave free", () => {
    // By the stated relation: N2 = N1 exp(-m/12) + n D s (1 - c1/cmax), c1 the cover of the first in their second month.
    const both = Array.from({ length: 8 }, (_, month) => (month === june || month === july ? 0.5 : 0));
    const first = both.map((share, month) => (month === june ? share : 0));
    const surface = surfaceAt(95);
    const alone = growLayers({ surface, density: first }, growth)[july];
    const together = growLayers({ surface, density: both }, growth)[july];
    const free = 1 - (alone?.cover ?? Number.NaN) / growth.coverLimit;
    expect(free).toBeGreaterThan(0.5);
    expect(free).toBeLessThan(1);
    expect(together?.number).toBeCloseTo((alone?.number ?? Number.NaN) + 2000 * free, 8);
  });
});

describe("mussels shed by crowding", () => {
  it("are gone: those left thin out over the winter as any others do", () => {
    // Nothing grows below the base temperature, from December to February, so that N exp(-m/12) alone is left.
    const density = Array.from({ length: 48 }, (_, month) => (month < 35 ? 1 : 0));
    const layers = growLayers({ surface: surfaceAt(95), density }, growth);
    expect(Math.max(...layers.map(({ cover }) => cover))).toBeCloseTo(growth.coverLimit, 9);
    const left = (layers[37]?.number ?? Number.NaN) / (layers[35]?.number ?? Number.NaN);
    expect(relativeGap(left, Math.exp((-2 * growth.yearlyMortality) / 12))).toBeLessThan(1e-3);
  });
});

describe("growth that starts within the year", () => {
  test.each([1, june, november])(
    "in month %d is that of a surface that was bare until then",
    (firstMonth) => {
      const surface = surfaceAt(95, drawnDownLake);
      const later = growLayers({ surface, density: Array<number>(30).fill(0.8), firstMonth }, growth);
      const bareBefore = [...Array<number>(firstMonth).fill(0), ...Array<number>(30).fill(0.8)];
      expect(plain(later)).toEqual(
        plain(growLayers({ surface, density: bareBefore }, growth).slice(firstMonth)),
      );
    },
  );
});

describe("a surface cleaned at a month's end", () => {
  it("is one that was bare when the next month began", () => {
    const surface = surfaceAt(95);
    const density = Array<number>(36).fill(0.7);
    const cleaned = growLayers({ surface, density, cleanAfter: (month) => month === 17 }, growth);
    const left = growLayers({ surface, density }, growth);
    expect(plain(cleaned.slice(0, 18))).toEqual(plain(left.slice(0, 18)));
    expect(plain(cleaned.slice(18))).toEqual(
      plain(growLayers({ surface, density: density.slice(18), firstMonth: 18 % 12 }, growth)),
    );
  });
});

describe("what dry runs kill in each year", () => {
  const sumsByYear = (input: Parameters<typeof growLayers>[0]) => {
    const layers = growLayers(input, growth);
    return Array.from({ length: layers.length / 12 }, (_, year) =>
      layers.slice(12 * year, 12 * year + 12).reduce((sum, { killed }) => sum + killed, 0),
    );
  };

  it("is the sum of its months, whether or not years are found to repeat", () => {
    // Two routes: the shorter one stops once nothing outlives the dry run at a density that no longer changes.
    fc.assert(
      fc.property(
        fc.integer({ min: 82, max: 101 }),
        fc.integer({ min: 80, max: 99 }),
        fc.integer({ min: 0, max: 50 }),
        fc.integer({ min: 1, max: 7 }),
        (elevation, low, rises, years) => {
          const drawdown = [
            { dayOfYear: 20, elevation: low },
            { dayOfYear: 25, elevation: low },
            { dayOfYear: 90, elevation: 100 },
          ];
          const surface = surfaceAt(elevation, { ...productiveLake, drawdown });
          const density = Array.from({ length: years * 12 }, (_, month) =>
            Math.min(1, (month + 1) / (rises + 1)),
          );
          const killed = killedByYear({ surface, density, settled: settledMonth(density) }, growth);
          const sums = sumsByYear({ surface, density });
          expect(killed).toHaveLength(years);
          for (const [year, each] of killed.entries()) expect(each).toBeCloseTo(sums[year] ?? Number.NaN, 9);
        },
      ),
      { seed: 93, numRuns: 60 },
    );
  });

  it("is nothing where it is never dry, and the same every year where all that stands dies", () => {
    const density = Array<number>(60).fill(1);
    expect(killedByYear({ surface: surfaceAt(70, drawnDownLake), density, settled: 0 }, growth)).toEqual([
      0, 0, 0, 0, 0,
    ]);
    const [first = Number.NaN, second = Number.NaN, ...rest] = killedByYear(
      { surface: surfaceAt(95, drawnDownLake), density, settled: 0 },
      growth,
    );
    // In the first January nothing has grown yet.
    expect(first).toBe(0);
    expect(second).toBeGreaterThan(1);
    for (const later of rest) expect(relativeGap(later, second)).toBeLessThan(0.01);
  });
});
