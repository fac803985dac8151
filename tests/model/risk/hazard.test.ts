import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type FoundingRates,
  foundingRate,
  yearlyHazard,
  yearlyHazards,
} from "../../../src/model/risk/hazard.js";

const chances = fc.double({ min: 0, max: 1 - 1e-9, noNaN: true });
const foundings = fc.double({ min: 0, max: 5, noNaN: true });
const plain: FoundingRates = { ofBoats: 1, unchecked: [0], checked: [0], openLaunches: 1000, shape: 1 };
const boatsOf = (each: number, launches = each * 1000) => ({ launches, foundings: each });

describe("the yearly chance", () => {
  it("is 1 − exp(−μ) of the foundings that boats make, by hand", () => {
    // μ = 1 gives 1 − 1/e; half the suitability halves it in the exponent.
    expect(yearlyHazard(boatsOf(1), 0, plain)).toBeCloseTo(1 - 1 / Math.E, 14);
    expect(yearlyHazard(boatsOf(1), 0, { ...plain, ofBoats: 0.5 })).toBeCloseTo(1 - Math.exp(-0.5), 14);
  });

  it("has foundings that are independent: twice as many square the chance to escape", () => {
    fc.assert(
      fc.property(foundings, chances, (each, ofBoats) => {
        const rates = { ...plain, ofBoats };
        const once = 1 - yearlyHazard(boatsOf(each), 0, rates);
        expect(1 - yearlyHazard(boatsOf(2 * each), 0, rates)).toBeCloseTo(once ** 2, 12);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it("joins another way in as an independent cause", () => {
    fc.assert(
      fc.property(foundings, chances, (each, other) => {
        const byBoat = yearlyHazard(boatsOf(each), 0, plain);
        const both = yearlyHazard(boatsOf(each), 0, { ...plain, unchecked: [-Math.log1p(-other)] });
        expect(1 - both).toBeCloseTo((1 - byBoat) * (1 - other), 12);
      }),
      { seed: 23, numRuns: 200 },
    );
  });

  it("is what the other ways leave when no boat brings mussels or no mussel can live", () => {
    const rates = { ...plain, unchecked: [-Math.log1p(-0.0125)] };
    expect(yearlyHazard(boatsOf(0), 0, rates)).toBeCloseTo(0.0125, 14);
    expect(yearlyHazard(boatsOf(0.8), 0, { ...rates, ofBoats: 0 })).toBeCloseTo(0.0125, 14);
    expect(yearlyHazard(boatsOf(0), 0, plain)).toBe(0);
  });

  it("counts a checked way in by the share of fouled launches that gets through, by hand", () => {
    // 250 of 1,000 launches get through: a quarter of a rate of 0.08 beside 0.01 that nothing checks and μ = 0.3.
    const rates = { ...plain, unchecked: [0.01], checked: [0.08] };
    expect(foundingRate({ launches: 250, foundings: 0.3 }, 0, rates)).toBeCloseTo(0.33, 14);
    expect(foundingRate({ launches: 0, foundings: 0 }, 0, rates)).toBeCloseTo(0.01, 14);
    expect(foundingRate({ launches: 1000, foundings: 0 }, 0, rates)).toBeCloseTo(0.09, 14);
  });

  it("takes all of a checked way in where no boat is fouled, since nothing tells what checks let through", () => {
    const rates = { ...plain, checked: [0.08], openLaunches: 0 };
    expect(foundingRate({ launches: 0, foundings: 0 }, 0, rates)).toBe(0.08);
  });

  it("is certain, and a number, by a way in that is certain", () => {
    // −ln(1 − 1) is infinite; an infinite rate that nothing gets through is none.
    const certain = -Math.log1p(-1);
    expect(yearlyHazard(boatsOf(0), 0, { ...plain, unchecked: [certain] })).toBe(1);
    expect(yearlyHazard(boatsOf(0.2, 250), 0, { ...plain, checked: [certain] })).toBe(1);
    expect(yearlyHazard({ launches: 0, foundings: 0 }, 0, { ...plain, checked: [certain] })).toBe(0);
  });

  it("is that of its own year", () => {
    const rates = { ...plain, unchecked: [0, 0.2], checked: [0.1, 0] };
    expect([0, 1].map((year) => foundingRate({ launches: 500, foundings: 0 }, year, rates))).toEqual([
      0.05, 0.2,
    ]);
  });

  it("of every year of the horizon is that of each, alike or not, with the foundings of boats times a scale", () => {
    const rates = { ...plain, ofBoats: 0.5, unchecked: [0, 0, 0.2, 0.2], checked: [0.1, 0.1, 0.1, 0] };
    const reaching = [boatsOf(0.4), boatsOf(0.4), boatsOf(0.4), boatsOf(0.2), boatsOf(9)];
    // By hand 0.5 × 3 × μ, with the other ways of the year; the fifth year is past the horizon.
    const expected = [0.6 + 0.04, 0.6 + 0.04, 0.6 + 0.2 + 0.04, 0.3 + 0.2].map((rate) => 1 - Math.exp(-rate));
    expect(yearlyHazards(reaching, rates, 3)).toEqual(expected.map((each) => expect.closeTo(each, 14)));
    const each = [0, 1, 2, 3].map((year) => yearlyHazard(reaching[year] ?? boatsOf(0), year, rates));
    expect(yearlyHazards(reaching, rates)).toEqual(each);
  });

  it("never falls when more boats arrive, and stays a chance", () => {
    fc.assert(
      fc.property(foundings, foundings, chances, chances, (few, more, unchecked, checked) => {
        const rates = { ...plain, unchecked: [unchecked], checked: [checked] };
        const fewer = yearlyHazard(boatsOf(few), 0, rates);
        expect(yearlyHazard(boatsOf(few + more), 0, rates)).toBeGreaterThanOrEqual(fewer);
        expect(fewer).toBeGreaterThanOrEqual(0);
        expect(fewer).toBeLessThanOrEqual(1);
      }),
      { seed: 24, numRuns: 200 },
    );
  });
});
