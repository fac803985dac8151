import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type HazardParameters, yearlyHazard } from "../../../src/model/risk/hazard.js";

const chances = fc.double({ min: 0, max: 1, noNaN: true });
const plain: HazardParameters = { establishmentPerArrival: 0.001, shape: 1, otherPathways: 0 };

describe("the yearly hazard", () => {
  it("is 1 - exp(-(aN)^c), the published form", () => {
    // Leung and others 2004, form P = 1 - exp(-(aN)^c) (form and c about 1.86 from memory). By hand: aN = 1 gives
    // 1 - 1/e for any c; aN = 0.5 with c = 2 gives 1 - exp(-0.25).
    expect(yearlyHazard(1000, 1, plain)).toBeCloseTo(1 - 1 / Math.E, 14);
    expect(yearlyHazard(1000, 1, { ...plain, shape: 1.86 })).toBeCloseTo(1 - 1 / Math.E, 14);
    expect(yearlyHazard(500, 1, { ...plain, shape: 2 })).toBeCloseTo(1 - Math.exp(-0.25), 14);
  });

  it("treats arrivals as independent where the shape is 1: twice as many square the chance to escape", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), chances, (arrivals, suitability) => {
        const once = 1 - yearlyHazard(arrivals, suitability, plain);
        const twice = 1 - yearlyHazard(2 * arrivals, suitability, plain);
        expect(twice).toBeCloseTo(once ** 2, 12);
      }),
      { seed: 21, numRuns: 200 },
    );
  });

  it("makes few arrivals safer where an Allee effect is assumed", () => {
    // Below aN = 1 a power above 1 lowers the pressure (from the form); Leung and others 2004 report the effect.
    fc.assert(
      fc.property(fc.double({ min: 1, max: 990, noNaN: true }), (arrivals) => {
        const allee = yearlyHazard(arrivals, 1, { ...plain, shape: 1.86 });
        expect(allee).toBeLessThan(yearlyHazard(arrivals, 1, plain));
      }),
      { seed: 22, numRuns: 100 },
    );
  });

  it("joins other pathways as an independent cause", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), chances, (arrivals, otherPathways) => {
        const byBoat = yearlyHazard(arrivals, 1, plain);
        const both = yearlyHazard(arrivals, 1, { ...plain, otherPathways });
        expect(1 - both).toBeCloseTo((1 - byBoat) * (1 - otherPathways), 12);
      }),
      { seed: 23, numRuns: 200 },
    );
  });

  it("is what other pathways leave when no boat carries mussels or no mussel can live", () => {
    expect(yearlyHazard(0, 1, { ...plain, otherPathways: 0.0125 })).toBeCloseTo(0.0125, 14);
    expect(yearlyHazard(800, 0, { ...plain, otherPathways: 0.0125 })).toBeCloseTo(0.0125, 14);
    expect(yearlyHazard(0, 0, plain)).toBe(0);
  });

  it("never falls when more boats arrive, and stays a chance", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1e4, noNaN: true }),
        fc.double({ min: 1, max: 1.86, noNaN: true }),
        chances,
        (arrivals, more, shape, otherPathways) => {
          const parameters = { ...plain, shape, otherPathways };
          const fewer = yearlyHazard(arrivals, 0.6, parameters);
          expect(yearlyHazard(arrivals + more, 0.6, parameters)).toBeGreaterThanOrEqual(fewer);
          expect(fewer).toBeGreaterThanOrEqual(0);
          expect(fewer).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 24, numRuns: 200 },
    );
  });
});
