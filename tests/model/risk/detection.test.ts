import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  chanceByAgeOf,
  chanceBySamples,
  meanDelay,
  noticedBy,
  yearlyMeans,
} from "../../../src/model/risk/detection.js";
import { relativeGap } from "../near.js";
import { chance } from "./courses.js";

/** Finds in one sample at full density; invented. */
const finds: Record<string, number> = {
  "detection.per-plankton-tow": 0.5,
  "detection.per-settlement-plate": 0.25,
  "detection.per-search": 2,
  "detection.per-edna-sample": 1,
};
const source = (id: string) => finds[id] ?? Number.NaN;
const count = fc.integer({ min: 0, max: 200 });
const densities = fc.array(chance, { minLength: 1, maxLength: 30 });
const anySamples = fc.record({
  planktonTows: count,
  settlementPlates: count,
  searches: count,
  ednaSamples: count,
});

describe("the chance to notice mussels in samples", () => {
  it("is by hand that of at least one of so many finds, in proportion to the density", () => {
    // 4 tows of 0.5, 4 plates of 0.25 and a search of 2 find 5 at full density: e^-0.5, e^-5 and e^0 are missed.
    const samples = { planktonTows: 4, settlementPlates: 4, searches: 1 };
    const [tenth, full, none] = chanceBySamples(samples, [0.1, 1, 0], source);
    expect(tenth).toBeCloseTo(1 - Math.exp(-0.5), 14);
    expect(full).toBeCloseTo(1 - Math.exp(-5), 14);
    expect(none).toBeCloseTo(0, 14);
  });

  it("is one half of one tow whose chance is one half", () => {
    // −ln(1 − 1/2) finds: the inverse of the Poisson chance of none (standard).
    const [chanceOfOne] = chanceBySamples({ planktonTows: 1 }, [1], () => Math.LN2);
    expect(chanceOfOne).toBeCloseTo(1 / 2, 14);
  });

  it("is nothing without samples, and reads no assumption of a kind that is not taken", () => {
    const read: string[] = [];
    const recorded = (id: string) => {
      read.push(id);
      return source(id);
    };
    expect(chanceBySamples({ planktonTows: 0 }, [0.5, 1], recorded).map(Math.abs)).toEqual([0, 0]);
    chanceBySamples({ searches: 3 }, [1], recorded);
    expect(read).toEqual(["detection.per-search"]);
  });

  it("misses with independent samples as with all of them together: chances of missing multiply", () => {
    fc.assert(
      fc.property(anySamples, anySamples, chance, (one, other, density) => {
        const missed = (samples: object) => 1 - (chanceBySamples(samples, [density], source)[0] ?? 1);
        const both = Object.fromEntries(
          Object.entries(one).map(([kind, n]) => [kind, n + Number(Reflect.get(other, kind))]),
        );
        expect(Math.abs(missed(both) - missed(one) * missed(other))).toBeLessThan(1e-12);
      }),
      { seed: 401, numRuns: 200 },
    );
  });

  it("never comes later with more samples or a higher density", () => {
    fc.assert(
      fc.property(anySamples, densities, count, (samples, density, more) => {
        const years = density.length;
        const by = (each: object, share: readonly number[]) =>
          noticedBy(chanceBySamples(each, share, source), years);
        const before = by(samples, density);
        const after = by({ ...samples, planktonTows: samples.planktonTows + more }, density);
        const denser = by(
          samples,
          density.map((share) => Math.min(1, share * 1.5)),
        );
        before.forEach((noticed, year) => {
          expect(after[year]).toBeGreaterThanOrEqual(noticed - 1e-12);
          expect(denser[year]).toBeGreaterThanOrEqual(noticed - 1e-12);
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
      fc.property(densities, (chances) => {
        const within = [...chances].sort((a, b) => a - b);
        noticedBy(chanceByAgeOf(within), within.length).forEach((noticed, year) => {
          expect(noticed).toBeCloseTo(within[year] ?? Number.NaN, 10);
        });
      }),
      { seed: 403, numRuns: 200 },
    );
  });

  it("are certain in the year after the list", () => {
    expect(noticedBy([0.2], 3)).toEqual([1 - 0.8, 1, 1]);
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
