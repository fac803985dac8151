import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Boats, ComparableLakes } from "../../../src/model/inputs.js";
import { boatRates, foundingRates, rateOfLakes } from "../../../src/model/risk/founding-rates.js";
import { foundingRate, type Reaching } from "../../../src/model/risk/hazard.js";
import { boats, ownWayAlone } from "../study.js";

/** Round numbers, so that all can be worked out by hand; invented. */
const numbers: Record<string, number> = {
  "arrival.base-rate-open": 0.02,
  "arrival.base-rate-inspected": 0.001,
  "arrival.inspected-through": 0.5,
  "arrival.busy-factor": 2,
  "arrival.kind-unknown": 0.5,
  "arrival.other-share": 0.2,
  "arrival.shape": 1,
};
const source = (id: string) => numbers[id] ?? Number.NaN;
const open: Reaching = { launches: 10, foundings: 0.01 };
const weighing = (weightOfBoats: number, lakes: Partial<ComparableLakes> = {}): Boats => ({
  ...boats,
  otherWays: [],
  comparable: { ...ownWayAlone, rate: { kind: "open" }, weightOfBoats, ...lakes },
});
const rateOf = (each: Boats, reaching = open, suitability = 1) =>
  foundingRate(reaching, 0, foundingRates(open, suitability, { boats: each, horizon: 3 }, source));
const weights = fc.double({ min: 0, max: 1, noNaN: true });
const through = fc.double({ min: 0, max: 1, noNaN: true });

describe("the rate of comparable lakes", () => {
  const lakes = (kind: Parameters<typeof rateOfLakes>[0]) => rateOfLakes(kind, source);

  it("is by hand that of open lakes, twice it of busy ones, and of inspected ones what their checks would not stop", () => {
    expect(lakes("open")).toBe(0.02);
    expect(lakes("busy")).toBe(0.04);
    // 0.001 with checks that let half through is 0.002 without.
    expect(lakes("inspected")).toBe(0.002);
    // Halfway by logarithms: √(0.02 · 0.002).
    expect(lakes("unknown")).toBeCloseTo(Math.sqrt(0.02 * 0.002), 14);
  });

  const others = [
    { name: "Canal", chance: 1 - Math.exp(-0.004), checked: false },
    { name: "Work craft", chance: 1 - Math.exp(-0.002), checked: true },
  ];

  it.each([
    ["no other way", []],
    ["named ways", others],
    ["the typical share of other ways", undefined],
  ])(
    "of a study's own is that of this lake, with %s, in any water, under the option that is in it",
    (_, otherWays) => {
      fc.assert(
        fc.property(
          fc.double({ min: 0.05, max: 1, noNaN: true }),
          through,
          (checksLetThrough, suitability) => {
            const each = { ...weighing(0, { rate: { own: 0.03 }, checksLetThrough }), otherWays };
            const under = {
              launches: open.launches * checksLetThrough,
              foundings: open.foundings * checksLetThrough,
            };
            expect(rateOf(each, under, suitability)).toBeCloseTo(0.03, 12);
          },
        ),
        { seed: 523, numRuns: 50 },
      );
    },
  );

  it("of a study's own leaves boats nothing where the named ways alone are more", () => {
    const each = { ...weighing(0, { rate: { own: 0.005 } }), otherWays: others };
    expect(boatRates(open, 1, each, source).byLakes).toBe(0);
  });
});

describe("the rate of the boats without a program", () => {
  it("is by hand from both ways, each in proportion to the suitability", () => {
    // Launches: 0.01 · 0.5. Lakes: 0.02 less the fifth that came otherwise, 0.016, times 0.5.
    const { byLaunches, byLakes, pooled } = boatRates(open, 0.5, weighing(0.25), source);
    expect(byLaunches).toBeCloseTo(0.005, 14);
    expect(byLakes).toBeCloseTo(0.008, 14);
    expect(pooled).toBeCloseTo(0.005 ** 0.25 * 0.008 ** 0.75, 14);
  });

  it("is that of launches with all the weight and that of lakes with none, whatever the other", () => {
    expect(rateOf(weighing(1))).toBeCloseTo(0.01, 14);
    expect(rateOf(weighing(0))).toBeCloseTo(0.016, 14);
    const muchElsewhere = { rate: { own: 5 } } as const;
    expect(rateOf(weighing(1, muchElsewhere))).toBeCloseTo(0.01, 14);
    const none = { launches: 0, foundings: 0 };
    expect(boatRates(none, 1, weighing(0), source).pooled).toBeCloseTo(0.016, 14);
    expect(boatRates(none, 1, weighing(0.3), source).pooled).toBe(0);
  });

  it("lies between the two, and rises with either", () => {
    fc.assert(
      fc.property(weights, fc.double({ min: 1e-6, max: 0.5, noNaN: true }), (weight, own) => {
        const { byLaunches, byLakes, pooled } = boatRates(
          open,
          1,
          weighing(weight, { rate: { own } }),
          source,
        );
        expect(pooled).toBeGreaterThanOrEqual(Math.min(byLaunches, byLakes) * (1 - 1e-12));
        expect(pooled).toBeLessThanOrEqual(Math.max(byLaunches, byLakes) * (1 + 1e-12));
        const more = { ...open, foundings: open.foundings * 1.5 };
        expect(boatRates(more, 1, weighing(weight, { rate: { own } }), source).pooled).toBeGreaterThanOrEqual(
          pooled,
        );
      }),
      { seed: 521, numRuns: 100 },
    );
  });
});

describe("the rate with a program", () => {
  it("is next to nothing, and finite, where next to no launch is fouled", () => {
    const few = { launches: 1e-310, foundings: 1e-318 };
    const rates = foundingRates(few, 1, { boats: weighing(0.5), horizon: 2 }, source);
    expect(rates.ofBoats).toBe(1);
    expect(foundingRate(few, 0, rates)).toBe(few.foundings);
    expect(foundingRate({ launches: 0, foundings: 0 }, 0, rates)).toBe(0);
  });

  it("is of the boats the share of foundings that it lets through, whatever drives the answer", () => {
    fc.assert(
      fc.property(weights, through, (weight, share) => {
        const each = weighing(weight);
        const reaching = { launches: open.launches * share, foundings: open.foundings * share };
        expect(rateOf(each, reaching)).toBeCloseTo(rateOf(each) * share, 14);
      }),
      { seed: 522, numRuns: 100 },
    );
  });

  it("is that of the other ways alone where it lets nothing through", () => {
    const otherWays = [
      { name: "Canal", chance: 0.01, checked: false },
      { name: "Work craft", chance: 0.03, checked: true },
    ];
    const nothing = { launches: 0, foundings: 0 };
    for (const weight of [0, 0.4, 1])
      expect(rateOf({ ...weighing(weight), otherWays }, nothing)).toBeCloseTo(-Math.log(0.99), 14);
  });

  it("falls no lower than the typical share of other ways, where the study names none", () => {
    // φ = 0.2 of the foundings without a program: all checks together take away at most 80 %.
    const unnamed = { ...weighing(0.4), otherWays: undefined };
    const without = rateOf(unnamed);
    expect(rateOf(unnamed, { launches: 0, foundings: 0 }) / without).toBeCloseTo(0.2, 12);
    expect(rateOf(unnamed, { launches: 5, foundings: 0.005 }) / without).toBeCloseTo(0.6, 12);
  });

  it("is that of comparable lakes as a whole where they drive the answer and no other way is named", () => {
    // Boats have 80 % of 0.02 and the other ways the rest, so that without a program the lake is like the others.
    expect(rateOf({ ...weighing(0), otherWays: undefined })).toBeCloseTo(0.02, 14);
  });
});

describe("what clean years taught", () => {
  // ln λ after them is m′ + (ln λ − m) s′/s, here √(λ/0.02) · 0.01.
  const learned = {
    medianBefore: 0.02,
    medianAfter: 0.01,
    narrowing: 0.5,
    chanceOfClean: 0.9,
    infestedUnseen: 0.02,
  };

  it("moves the rate of all ways by one factor", () => {
    const otherWays = [{ name: "Canal", chance: 1 - Math.exp(-0.0025), checked: false }];
    const each = { ...weighing(1), otherWays, learned };
    // 0.01 by boats and 0.0025 by the canal become √(0.0125/0.02) · 0.01, a fifth of it the canal's.
    const after = Math.sqrt(0.0125 / 0.02) * 0.01;
    expect(rateOf(each)).toBeCloseTo(after, 14);
    expect(rateOf(each, { launches: 0, foundings: 0 })).toBeCloseTo(after / 5, 14);
  });

  it("counts the ways that stations check in the rate that it moves", () => {
    const otherWays = [
      { name: "Canal", chance: 1 - Math.exp(-0.0025), checked: false },
      { name: "Work craft", chance: 1 - Math.exp(-0.0075), checked: true },
    ];
    // By hand: 0.01 by boats and 0.01 by the others are the median before, and become that after.
    const each = { ...weighing(1), otherWays, learned };
    expect(rateOf(each)).toBeCloseTo(0.01, 14);
    expect(rateOf(each, { launches: 5, foundings: 0.005 })).toBeCloseTo((0.005 + 0.0025 + 0.00375) / 2, 14);
  });

  it("moves the boats' rate where none is fouled yet", () => {
    const each = { ...weighing(0, { rate: { own: 0.02 } }), learned };
    const rates = foundingRates({ launches: 0, foundings: 0 }, 0.8, { boats: each, horizon: 1 }, source);
    // By hand: the median before halves, and so does the suitability of 0.8.
    expect(rates.ofBoats).toBeCloseTo(0.4, 14);
  });

  it("takes the median before to the median after", () => {
    const median = { ...weighing(0, { rate: { own: 0.02 } }), learned };
    expect(rateOf(median)).toBeCloseTo(0.01, 14);
  });

  it("says nothing of a rate that is none or without bound", () => {
    const none = { ...boats, otherWays: [], comparable: ownWayAlone, learned };
    const rates = foundingRates({ launches: 0, foundings: 0 }, 1, { boats: none, horizon: 1 }, source);
    expect(rates.ofBoats).toBe(1);
    const certain = { ...none, otherWays: [{ name: "Canal", chance: 1, checked: false }] };
    expect(rateOf(certain)).toBe(Number.POSITIVE_INFINITY);
  });
});
