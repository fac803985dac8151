import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import type { Boats, VesselClass } from "../../../src/model/inputs.js";
import { foundingChances, shareOfWay, togetherOf } from "../../../src/model/program/founding-chances.js";
import { boats } from "../study.js";

/** Round numbers, so that all can be worked out by hand; invented. */
const numbers: Record<string, number> = {
  "arrival.founding-unknown": 0.001,
  "arrival.founding-near": 0.004,
  "arrival.founding-far": 0.0001,
  "arrival.living-share-unknown": 0.25,
  "arrival.living-share-near": 0.4,
  "arrival.living-share-far": 0.1,
  "arrival.near-days": 2,
  "arrival.far-days": 8,
  "arrival.shape": 1.5,
  "arrival.reference-launches": 5,
};
const source = (id: string) => numbers[id] ?? Number.NaN;
const classOf = (each: Partial<VesselClass>): Boats => ({
  ...boats,
  classes: [{ id: "all", name: "All", share: 1, fouled: 0.1, ...each }],
});
const chanceOf = (each: Partial<VesselClass>, read: (id: string) => number = source) =>
  at(foundingChances(classOf(each), read), 0);

describe("the chance that one fouled launch founds a population", () => {
  it("is that of unknown, of near and of far boats", () => {
    expect(chanceOf({})).toBe(0.001);
    expect([0, 1, 2].map((daysSince) => chanceOf({ daysSince }))).toEqual([0.004, 0.004, 0.004]);
    expect([8, 30, 1000].map((daysSince) => chanceOf({ daysSince }))).toEqual([0.0001, 0.0001, 0.0001]);
  });

  it("falls evenly in its logarithm with that of the days between, by hand", () => {
    // 4 days are halfway from 2 to 8 by logarithms: √(0.004 · 0.0001). 2√2 days are a quarter of the way.
    expect(shareOfWay(4, 2, 8)).toBeCloseTo(0.5, 14);
    expect(chanceOf({ daysSince: 4 })).toBeCloseTo(Math.sqrt(0.004 * 0.0001), 14);
    expect(chanceOf({ daysSince: 2 * Math.SQRT2 })).toBeCloseTo(0.004 ** 0.75 * 0.0001 ** 0.25, 14);
  });

  it("has no jump at either end, and never rises with the days", () => {
    for (const days of [2, 8]) {
      const [before, after] = [chanceOf({ daysSince: days - 1e-9 }), chanceOf({ daysSince: days + 1e-9 })];
      expect(Math.abs(before / after - 1)).toBeLessThan(1e-7);
    }
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (days, more) => {
          expect(chanceOf({ daysSince: days + more })).toBeLessThanOrEqual(
            chanceOf({ daysSince: days }) * (1 + 1e-12),
          );
        },
      ),
      { seed: 501, numRuns: 200 },
    );
  });

  it("goes with the share living, and stays where that is the share typical of its reach", () => {
    // By hand: half of the typical share halves it. At 4 days √(0.4 · 0.1) = 0.2 is typical.
    expect(chanceOf({ living: 0.25 })).toBe(0.001);
    expect(chanceOf({ living: 0.4, daysSince: 1 })).toBe(0.004);
    expect(chanceOf({ living: 0.1, daysSince: 9 })).toBe(0.0001);
    expect(chanceOf({ living: 0.2, daysSince: 4 })).toBeCloseTo(chanceOf({ daysSince: 4 }), 14);
    expect(chanceOf({ living: 0.125 })).toBeCloseTo(0.0005, 14);
    expect(chanceOf({ living: 1 })).toBeCloseTo(0.004, 14);
    expect(chanceOf({ living: 0 })).toBe(0);
  });

  it("is a chance: never above 1", () => {
    // 0.5 at a typical quarter living would be 2 where all live.
    const certain = (id: string) => (id === "arrival.founding-unknown" ? 0.5 : source(id));
    expect(chanceOf({ living: 1 }, certain)).toBe(1);
    expect(chanceOf({ living: 0.375 }, certain)).toBeCloseTo(0.75, 14);
  });

  it("reads nothing of far boats for near ones, nor of near boats for far ones", () => {
    const readFor = (daysSince: number) => {
      const read: string[] = [];
      chanceOf({ daysSince, living: 0.2 }, (id) => {
        read.push(id);
        return source(id);
      });
      return read.filter((id) => /founding|living/.test(id));
    };
    expect(readFor(1)).toEqual(["arrival.founding-near", "arrival.living-share-near"]);
    expect(readFor(9)).toEqual(["arrival.founding-far", "arrival.living-share-far"]);
  });

  it("reads nothing for a class without fouled boats", () => {
    const unread = (id: string): number => {
      throw new Error(`${id} was read`);
    };
    expect(chanceOf({ fouled: 0, living: 0.5, daysSince: 4 }, unread)).toBe(0);
  });
});

describe("foundings of launches together", () => {
  it("agree at the reference number of launches with any exponent", () => {
    for (const shape of [1, 1.5, 1.86]) {
      const read = (id: string) => (id === "arrival.shape" ? shape : source(id));
      expect(togetherOf({ launches: 5, foundings: 0.02 }, read)).toBeCloseTo(0.02, 14);
    }
  });

  it("are more than each alone above it and fewer below, by hand", () => {
    // Foundings times (F/5)^0.5: 20 launches double them, 1.25 halve them.
    expect(togetherOf({ launches: 20, foundings: 0.02 }, source)).toBeCloseTo(0.04, 14);
    expect(togetherOf({ launches: 1.25, foundings: 0.02 }, source)).toBeCloseTo(0.01, 14);
  });

  it("are as a table has them at α = 0.0011 and c = 1.5", () => {
    // Yearly chances of F = 0.5, 1, 5 and 20 fouled launches, worked out with the estimate of α from published counts:
    // .02, .05, .55 and 4.3 %, rounded as printed there.
    const chance = (launches: number) =>
      -100 * Math.expm1(-togetherOf({ launches, foundings: 0.0011 * launches }, source));
    expect(chance(0.5).toFixed(2)).toBe("0.02");
    expect(chance(1).toFixed(2)).toBe("0.05");
    expect(chance(5).toFixed(2)).toBe("0.55");
    expect(chance(20).toFixed(1)).toBe("4.3");
  });

  it("are none of no launches", () => {
    expect(togetherOf({ launches: 0, foundings: 0 }, source)).toBe(0);
  });
});
