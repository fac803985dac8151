import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { turbineCurve, turbineEfficiency, turbineIds } from "../../../src/model/hydraulics/turbine.js";
import { assumed, assumptionSet } from "../assumptions.js";

const types = ["francis", "kaplan", "propeller", "crossflow", "pelton"] as const;
const curveOf = (type: (typeof types)[number]) => turbineCurve(type, assumed);

describe("the efficiency of a turbine", () => {
  it("joins its points by straight lines and ends at the technical minimum", () => {
    // By hand: peak 0.9; half way between 40 and 60 %, and on the line from nothing to 20 %.
    const curve = { peakEfficiency: 0.9, relative: [0.5, 0.8, 1, 1, 0.9], minimumShare: 0.1 };
    const at = (share: number) => turbineEfficiency(curve, share);
    expect(at(0.6)).toBeCloseTo(0.9, 12);
    expect(at(0.5)).toBeCloseTo(0.9 * 0.9, 12);
    expect(at(1)).toBeCloseTo(0.9 * 0.9, 12);
    expect(at(0.9)).toBeCloseTo(0.9 * 0.95, 12);
    expect(at(0.15)).toBeCloseTo(0.9 * 0.375, 12);
    expect(at(0.1)).toBeCloseTo(0.9 * 0.25, 12);
    expect([at(0.0999), at(0)]).toEqual([0, 0]);
  });

  test.each(types)("of a %s is at most its peak, reached at one of the known flows", (type) => {
    const curve = curveOf(type);
    expect(Math.max(...curve.relative)).toBeGreaterThanOrEqual(0.98);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const efficiency = turbineEfficiency(curve, share);
        expect(efficiency).toBeGreaterThanOrEqual(0);
        expect(efficiency).toBeLessThanOrEqual(curve.peakEfficiency);
      }),
      { seed: 301, numRuns: 100 },
    );
  });

  test.each([
    // Peak efficiencies of the guide of the European Small Hydropower Association 2004 (from memory).
    ["kaplan", 0.93],
    ["francis", 0.94],
    ["pelton", 0.9],
  ] as const)("of a %s peaks at %d", (type, peak) => {
    expect(curveOf(type).peakEfficiency).toBe(peak);
  });

  it("of a crossflow peaks between 0.80 and 0.86 (from memory)", () => {
    expect(curveOf("crossflow").peakEfficiency).toBeGreaterThanOrEqual(0.8);
    expect(curveOf("crossflow").peakEfficiency).toBeLessThanOrEqual(0.86);
  });

  it("falls off at part load in the order that textbooks draw (from memory)", () => {
    // At 40 % of the rated flow adjustable blades and jets hold their efficiency, Francis loses, fixed blades most.
    const at = (type: (typeof types)[number]) => curveOf(type).relative[1] ?? Number.NaN;
    for (const steady of ["kaplan", "crossflow", "pelton"] as const) {
      expect(at(steady)).toBeGreaterThan(at("francis"));
    }
    expect(at("francis")).toBeGreaterThan(at("propeller"));
  });

  test.each(types)("of a %s rests on assumptions that are said to be from memory", (type) => {
    const bases = turbineIds(type).map((id) => assumptionSet.entries.get(id)?.basis);
    expect(bases).toEqual(Array(7).fill("from memory"));
  });
});
