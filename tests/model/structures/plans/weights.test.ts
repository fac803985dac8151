import { describe, expect, it } from "vitest";
import type { Charge, Priced } from "../../../../src/model/structures/component.js";
import { foundMonths, weightIn } from "../../../../src/model/structures/plans/found.js";
import {
  addCost,
  costOfLines,
  noCost,
  partOf,
  planWeights,
  weighed,
} from "../../../../src/model/structures/plans/weights.js";

/** Three years without interest in which energy doubles from year to year, in prices of the middle of the first. */
const money = {
  horizon: 3,
  discountRate: 0,
  timing: "mid-year",
  priceYear: 2026,
  startYear: 2026,
  escalation: [{ group: "energy", rate: 1 }],
} as const;
const clean = planWeights(money, { isInfested: false, yearsInfested: 0 });

const line = (quantityKind: Charge["quantityKind"], quantity: number, unitRate: number): Priced => ({
  what: quantityKind,
  type: "loss",
  quantity,
  quantityKind,
  unitRate,
  assumptionIds: [],
});

describe("what a year of a cost weighs, by hand", () => {
  it("is that of all years in which mussels may establish, part by part", () => {
    expect(clean.groups).toEqual(["energy"]);
    // Energy costs 1, 2 and 4: the first year of an infestation is each of the three, the second 2 and 4, the third 4.
    const thirds = [
      [3, 7],
      [2, 6],
      [1, 4],
    ];
    expect(clean.byYear).toEqual(thirds.map((parts) => parts.map((each) => expect.closeTo(each / 3, 12))));
    expect(clean.whole).toBeCloseTo((3 + 2 + 1) / 3, 12);
  });

  it("is that of the study's own years in an infested lake, and nothing before", () => {
    const { byYear, whole } = planWeights(money, { isInfested: true, yearsInfested: 2 });
    const expected = [
      [0, 0],
      [0, 0],
      [1, 1],
      [1, 2],
      [1, 4],
    ];
    expect(byYear).toEqual(expected);
    expect(whole).toBe(3);
  });

  it("adds up over the years in which it comes again", () => {
    const { byYear, repeating } = planWeights(
      { ...money, horizon: 5, escalation: [] },
      { isInfested: true, yearsInfested: 0 },
    );
    expect(byYear).toEqual([[1], [1], [1], [1], [1]]);
    // Every other year: in the first, third and fifth, or in the second and fourth.
    expect(repeating(2)).toEqual([[3], [2], [2], [1], [1]]);
    expect(repeating(1)).toEqual([[5], [4], [3], [2], [1]]);
  });
});

describe("a cost in parts, by hand", () => {
  it("has what lines of each group come to, and all others first", () => {
    const lines = [line("energy", 10, 3), line("mass", 5, 2), line("energy", 1, 4), line("hours", 2, 20)];
    expect(costOfLines(lines, clean)).toEqual([50, 34]);
    expect([partOf(line("energy", 1, 1), clean), partOf(line("mass", 1, 1), clean)]).toEqual([1, 0]);
  });

  it("counts by its weights, part by part", () => {
    expect(weighed([50, 34], [2, 3])).toBe(202);
  });

  it("takes a share of another", () => {
    const sums = [1, 2];
    addCost(sums, [10, 20], 0.5);
    expect(sums).toEqual([6, 12]);
    expect(noCost(clean)).toEqual([0, 0]);
  });
});

describe("months in which mussels are regularly found, by hand", () => {
  const density = Array.from({ length: 36 }, (_, month) => month / 100);

  it("are those from the density on at which protections begin", () => {
    const found = foundMonths(density, 0.14, clean);
    expect(found.ever).toBe(true);
    expect([13, 14, 35].map(found.isFound)).toEqual([false, true, true]);
    expect(found.others).toEqual(Array.from({ length: 14 }, (_, month) => month));
    // From March of the second year on: January and February in the third alone.
    const both = [2 + 1, 6 + 4];
    const expected = [[1, 4], [1, 4], ...Array<number[]>(10).fill(both)];
    expect(found.weights).toEqual(expected.map((parts) => parts.map((each) => expect.closeTo(each / 3, 12))));
  });

  it("are none in a lake in which they stay few", () => {
    const { ever, others, weights } = foundMonths(density, 1, clean);
    expect([ever, others.length]).toEqual([false, 36]);
    expect(weights.flat().every((weight) => weight === 0)).toBe(true);
  });

  it("weigh what their year does", () => {
    expect([11, 12, 35].map((month) => weightIn(month, clean))).toEqual([
      clean.byYear[0],
      clean.byYear[1],
      clean.byYear[2],
    ]);
  });
});
