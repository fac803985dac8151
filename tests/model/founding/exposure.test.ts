import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LakeYears, Region } from "../../../src/model/founding/evidence.js";
import {
  commonShares,
  countedFouled,
  exposureOf,
  interceptedRange,
  lakeYearsAtRisk,
  throughRatio,
  yearlyRate,
} from "../../../src/model/founding/exposure.js";
import {
  countsWithout,
  jeffreys,
  longHaulsOf,
  regionCounts,
} from "../../../src/model/founding/founding-estimate.js";
import {
  densityOf,
  exactly,
  lognormalThrough,
  normalised,
  quantileOf,
  tenthsOf,
  times,
} from "../../../src/model/founding/log-density.js";
import { betaThrough, sharesThrough } from "../../../src/model/founding/share-range.js";
import { betaQuantile } from "../../../src/model/risk/beta.js";
import { near, shipped, withRegion } from "./counts.js";

const lakes = (infested: number, all: number, years: number, untilInfested = false): LakeYears => ({
  id: "lakes",
  group: "open",
  infested,
  lakes: all,
  years,
  untilInfested,
});

describe("launches that got through", () => {
  it("are 108.33 for 100 found, where 60 % are met and 80 % of those found", () => {
    // By hand: 100 × (0.52/0.48).
    expect(100 * throughRatio(0.6 * 0.8, 1)).toBeCloseTo(108.333, 3);
    const all = { low: 1 - 1e-9, high: 1 - 1e-9 };
    const exposure = exposureOf(
      {
        id: "a",
        name: "A",
        reach: "far",
        foundings: [],
        kind: "inspected",
        seasons: [{ fouled: 100 }],
        uncounted: { low: 0, high: 0 },
        coverage: { low: 0.6, high: 0.6 },
        destined: all,
      },
      commonShares({ ...shipped, sensitivity: { low: 0.8, high: 0.8 }, efficacy: all }),
    );
    // A grid point on each side of the value: told apart to 10 %.
    expect(near(quantileOf(exposure, 0.5), 108.333, 0.03)).toBe(true);
  });

  it("are none where every boat is met and found, and wash and hold stop all", () => {
    expect(throughRatio(1, 1)).toBe(0);
  });

  // Computed independently by sampling (a second route), notes of the project; two to four digits.
  it.each([
    ["idaho", 101, 202, 404],
    ["montana", 55, 116, 244],
    ["oregon", 41, 86, 179],
    ["washington", 100, 210, 452],
    ["british-columbia", 55, 106, 207],
    ["alberta", 13, 28, 58],
    ["wyoming", 30, 63, 134],
    ["colorado", 290, 624, 1299],
    ["lake-tahoe", 16, 31, 58],
    ["utah-from-powell", 56, 198, 591],
    ["switzerland", 260, 607, 1336],
  ])("are those of the notes: %s", (id, p10, p50, p90) => {
    const index = shipped.regions.findIndex((region) => region.id === id);
    const found = tenthsOf(regionCounts(shipped)[index]?.exposure ?? exactly(1));
    expect([found.p10 / p10, found.p50 / p50, found.p90 / p90].map((ratio) => near(ratio, 1, 0.04))).toEqual([
      true,
      true,
      true,
    ]);
  });

  it("come from the rows, none counted twice, and from what they leave out", () => {
    const seasons = [
      { fouled: 145 },
      { fouled: 25, within: "2009 to Nov 2015" },
      { alive: 1 },
      { fouled: 19 },
    ];
    expect(countedFouled(seasons)).toBe(164);
    expect(interceptedRange(seasons, { low: -2, high: 50 })).toEqual({ low: 162, high: 214 });
  });
});

describe("boats whose mussels were examined", () => {
  it("counts boats after long hauls in seasons that tell both, each once", () => {
    const seasons = [
      { fouled: 40, alive: 3 },
      { fouled: 10, alive: 2, within: "all" },
      { alive: 5 },
      { fouled: 70 },
    ];
    const far = (region: Region): Region => ({ ...region, seasons }) as Region;
    const { regions } = withRegion("wyoming", far, countsWithout(shipped, ["idaho"]));
    expect(longHaulsOf({ ...shipped, regions })).toEqual({ alive: 3, examined: 40 });
  });
});

describe("lake-years", () => {
  // Kraft and Johnson 2000 (abstract): 15 of 49 lakes of the survey in Michigan; the eight years are judged.
  it("of 15 of 49 lakes in 8 years are 328, at 4.57 % a year", () => {
    expect(100 * yearlyRate(lakes(15, 49, 8))).toBeCloseTo(4.57, 2);
    expect(Math.round(lakeYearsAtRisk(lakes(15, 49, 8)))).toBe(328);
  });

  it("of lakes that stay clean, or of which each is followed until it is infested, are all of them", () => {
    expect(lakeYearsAtRisk(lakes(0, 75, 10))).toBe(750);
    expect(lakeYearsAtRisk(lakes(1, 1, 13, true))).toBe(13);
  });

  it("after Jeffreys and no count at all follow the arcsine law", () => {
    // Closed form: the share p lies below sin²(πp/2).
    const { p10, p50, p90 } = jeffreys(0, 0);
    const law = [0.1, 0.5, 0.9].map((p) => expect.closeTo(Math.sin((Math.PI * p) / 2) ** 2, 9));
    expect([p10, p50, p90]).toEqual(law);
  });

  it("after Jeffreys: none in 750 are at most 0.18 % a year with a chance of 90 %", () => {
    // By hand: half of the 90th percentile of χ² with one degree of freedom, 2.7055, over 750.
    expect(jeffreys(0, 750).p90).toBeCloseTo(0.0018, 5);
  });
});

describe("a quantity on a grid of logarithms", () => {
  const share = fc.double({ min: 0.005, max: 0.995, noNaN: true });
  const range = fc
    .tuple(share, share)
    .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) }))
    .filter(({ low, high }) => high - low > 1e-4);

  it("has the 5th and the 95th percentile of its beta distribution", () => {
    fc.assert(
      fc.property(range, ({ low, high }) => {
        const { alpha, beta } = betaThrough({ low, high });
        const width = high - low;
        expect(Math.abs(betaQuantile(0.05, alpha, beta) - low)).toBeLessThan(0.01 * width);
        expect(Math.abs(betaQuantile(0.95, alpha, beta) - high)).toBeLessThan(0.01 * width);
      }),
      { seed: 221, numRuns: 200 },
    );
  });

  it("weighs shares by the beta distribution", () => {
    fc.assert(
      fc.property(range, ({ low, high }) => {
        const { alpha, beta } = betaThrough({ low, high });
        const shares = sharesThrough({ low, high });
        const all = shares.reduce((sum, { weight }) => sum + weight, 0);
        const mean = shares.reduce((sum, { value, weight }) => sum + value * weight, 0) / all;
        expect(Math.abs(mean - alpha / (alpha + beta))).toBeLessThan(0.02 * (high - low));
      }),
      { seed: 222, numRuns: 200 },
    );
  });

  it("is lognormal through its percentiles, a single value where both are the same", () => {
    const found = tenthsOf(lognormalThrough({ low: 100, high: 10_000 }));
    // By hand: 1000 · 10^(±1.2816/1.6449).
    expect(near(found.p10, 166.3, 0.02)).toBe(true);
    expect(near(found.p50, 1000, 0.01)).toBe(true);
    expect(near(found.p90, 6013, 0.02)).toBe(true);
    expect(near(quantileOf(lognormalThrough({ low: 7, high: 7 }), 0.5), 7, 0.03)).toBe(true);
  });

  const logOf = ({ first, chances }: ReturnType<typeof exactly>) =>
    chances.reduce((sum, chance, cell) => sum + (chance * (first + cell)) / 10, 0);

  it("is as wide on one side of its middle as on the other", () => {
    expect(logOf(lognormalThrough({ low: 10, high: 1000 }))).toBeCloseTo(Math.log(100), 9);
    const shares = sharesThrough({ low: 0.2, high: 0.8 });
    shares.forEach(({ value, weight }, index) => {
      const mirrored = shares.at(-1 - index);
      expect(mirrored?.value).toBeCloseTo(1 - value, 9);
      expect(mirrored?.weight).toBeCloseTo(weight, 9);
    });
  });

  it("is refused where nothing has a chance", () => {
    expect(() => normalised({ first: 0, chances: new Float64Array(3) })).toThrow("chances that are all 0");
    expect(normalised({ first: 4, chances: Float64Array.of(1, 3) })).toEqual({
      first: 4,
      chances: Float64Array.of(1 / 4, 3 / 4),
    });
  });

  it("keeps the logarithm of every value, and of a product", () => {
    const value = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const mixed = densityOf([
          { value: a, weight: 3 },
          { value: b, weight: 1 },
        ]);
        expect(logOf(mixed)).toBeCloseTo((3 * Math.log(a) + Math.log(b)) / 4, 9);
        expect(logOf(times(exactly(a), exactly(b)))).toBeCloseTo(Math.log(a * b), 9);
      }),
      { seed: 223 },
    );
  });
});
