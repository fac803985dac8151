import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chanceByAgeOf,
  chanceBySamples,
  detectedBy,
  meanDelay,
  yearlyMeans,
} from "../../../src/model/risk/detection.js";
import { relativeGap } from "../near.js";
import { chance } from "./hazard-cases.js";

/** Finds in one sample at full density, invented; the chances at usual effort of first finds, judged. */
const numbers: Record<string, number> = {
  "detection.per-plankton-tow": 0.5,
  "detection.per-settlement-plate": 0.25,
  "detection.per-search": 2,
  "detection.per-edna-sample": 1,
  "detection.usual-tows": 24,
  "detection.within-1-year": 0.15,
  "detection.within-2-years": 0.5,
  "detection.within-3-years": 0.75,
  "detection.within-4-years": 0.9,
};
const source = (id: string) => numbers[id] ?? Number.NaN;
const usual = [0.15, 0.5, 0.75, 0.9];
const foundBy = (samples: object, years = 4, read = source) =>
  detectedBy(chanceBySamples(samples, years, read), years);
const count = fc.integer({ min: 0, max: 200 });
const lists = fc.array(chance, { minLength: 1, maxLength: 30 });
const anySamples = fc.record({
  planktonTows: count,
  settlementPlates: count,
  searches: count,
  ednaSamples: count,
});

describe("the chance to have found mussels in samples", () => {
  it("is at usual effort that of first finds, by tows or by what is worth as much", () => {
    // 24 tows of 0.5 find 12: so do 6 searches of 2, or 8 tows, 8 plates of 0.25, 2 searches and 2 eDNA samples of 1.
    const alike = [
      { planktonTows: 24 },
      { searches: 6 },
      { planktonTows: 8, settlementPlates: 8, searches: 2, ednaSamples: 2 },
    ];
    for (const samples of alike) {
      foundBy(samples).forEach((found, year) => {
        expect(found).toBeCloseTo(usual[year] ?? Number.NaN, 12);
      });
    }
  });

  it("is 1 − (1 − Q)² at twice the effort, and 1 − √(1 − Q) at half of it, by hand", () => {
    // Two independent looks both miss with (1 − Q)².
    foundBy({ planktonTows: 48 }).forEach((found, year) => {
      expect(found).toBeCloseTo(1 - (1 - (usual[year] ?? Number.NaN)) ** 2, 12);
    });
    foundBy({ planktonTows: 12 }).forEach((found, year) => {
      expect(found).toBeCloseTo(1 - Math.sqrt(1 - (usual[year] ?? Number.NaN)), 12);
    });
  });

  it("goes on after the fourth year as in the fourth, by hand", () => {
    // In year 4, (0.9 − 0.75)/(1 − 0.75) = 0.6 of what was not found before; then the same of the rest each year.
    const found = foundBy({ planktonTows: 24 }, 6);
    expect(found[4]).toBeCloseTo(1 - 0.1 * 0.4, 12);
    expect(found[5]).toBeCloseTo(1 - 0.1 * 0.4 ** 2, 12);
  });

  it("does not fall from one year to the next where the chances were drawn apart", () => {
    const drawn = (id: string) => (id === "detection.within-2-years" ? 0.1 : source(id));
    const [first, second, third] = foundBy({ planktonTows: 24 }, 4, drawn);
    expect(second).toBe(first);
    expect(third).toBeCloseTo(0.75, 12);
  });

  it("is nothing without samples, and reads no worth of a kind that is not taken", () => {
    const read: string[] = [];
    const recorded = (id: string) => {
      read.push(id);
      return source(id);
    };
    expect(chanceBySamples({ planktonTows: 0 }, 2, recorded)).toEqual([0, 0]);
    expect(read).toEqual([]);
    chanceBySamples({ searches: 3 }, 1, recorded);
    expect(read).toContain("detection.per-search");
    expect(read).not.toContain("detection.per-settlement-plate");
    expect(read).not.toContain("detection.per-edna-sample");
  });

  it("misses with independent samples as with all of them together: chances of missing multiply", () => {
    fc.assert(
      fc.property(anySamples, anySamples, fc.integer({ min: 0, max: 8 }), (one, other, age) => {
        const missed = (samples: object) => 1 - (chanceBySamples(samples, 9, source)[age] ?? 1);
        const both = Object.fromEntries(
          Object.entries(one).map(([kind, n]) => [kind, n + Number(Reflect.get(other, kind))]),
        );
        expect(Math.abs(missed(both) - missed(one) * missed(other))).toBeLessThan(1e-12);
      }),
      { seed: 401, numRuns: 200 },
    );
  });

  it("never comes later with more samples", () => {
    fc.assert(
      fc.property(anySamples, fc.integer({ min: 1, max: 30 }), count, (samples, years, more) => {
        const before = foundBy(samples, years);
        const after = foundBy({ ...samples, planktonTows: samples.planktonTows + more }, years);
        before.forEach((noticed, year) => {
          expect(after[year]).toBeGreaterThanOrEqual(noticed - 1e-12);
        });
      }),
      { seed: 402, numRuns: 200 },
    );
  });
});

describe("chances to have noticed by the end of each year", () => {
  it("are turned into chances of each year by hand", () => {
    // Half by year 1; 3/4 by year 2: half of the rest; none more by year 3.
    expect(chanceByAgeOf([0.5, 0.75, 0.75])).toEqual([0.5, 0.5, 0]);
    expect(chanceByAgeOf([0.5, 1, 1])).toEqual([0.5, 1, 1]);
  });

  it("come back from the chances of each year", () => {
    fc.assert(
      fc.property(lists, (chances) => {
        const within = [...chances].sort((a, b) => a - b);
        detectedBy(chanceByAgeOf(within), within.length).forEach((noticed, year) => {
          expect(noticed).toBeCloseTo(within[year] ?? Number.NaN, 10);
        });
      }),
      { seed: 403, numRuns: 200 },
    );
  });

  it("are certain in the year after the list", () => {
    expect(detectedBy([0.2], 3)).toEqual([1 - 0.8, 1, 1]);
  });
});

describe("the mean time unnoticed", () => {
  it("is (1−p)/p at a steady chance p", () => {
    // Failures before the first success of a geometric distribution (standard); the list ends where 1e-9 is left.
    for (const p of [0.05, 0.3, 0.9]) {
      const years = Math.ceil(-21 / Math.log1p(-p));
      expect(relativeGap(meanDelay(Array<number>(years).fill(p)), (1 - p) / p)).toBeLessThan(1e-7);
    }
  });

  it("is nothing at once, and the years before a certain find", () => {
    expect(meanDelay([])).toBe(0);
    expect(meanDelay([0, 0, 0])).toBe(3);
    // By hand: half is unnoticed after year 1, a quarter after year 2.
    expect(meanDelay([0.5, 0.5])).toBeCloseTo(0.75, 14);
  });
});

describe("the mean of each year", () => {
  it("is over its twelve months", () => {
    expect(
      yearlyMeans([...Array<number>(12).fill(2), ...Array.from({ length: 12 }, (_, month) => month)]),
    ).toEqual([2, 5.5]);
  });
});
