import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { type CostLine, costLine, totalOf } from "../../../src/model/money/line.js";
import { priceGroupOf, priceGroups } from "../../../src/model/money/price-group.js";
import { inEachYear, risesOf } from "../../../src/model/money/price-rises.js";
import { relativeGap } from "../near.js";

const line = (type: CostLine["type"], quantityKind: CostLine["quantityKind"], amount = 100): CostLine =>
  costLine({
    structure: "plant",
    what: "a line",
    type,
    bearer: "authority",
    quantity: 1,
    quantityKind,
    unitRate: amount,
    assumptionIds: [],
  });

const times = { priceYear: 2025, startYear: 2027, timing: "mid-year" as const };

describe("the group of a line", () => {
  // What the kinds of lines are for; by the meaning of quantity and type, no outside source.
  test.each([
    ["loss", "energy", "energy"],
    ["protection", "energy", "energy"],
    ["revenue", "energy", "energy"],
    ["loss", "volume", "water"],
    ["program", "volume", "water"],
    ["protection", "volume", "treatment"],
    ["work", "hours", "labour"],
    ["work", "visits", "labour"],
    ["protection", "visits", "labour"],
    ["protection", "year", "treatment"],
    ["program", "hours", "wages"],
    ["program", "year", "other"],
    ["work", "area", "other"],
    ["work", "mass", "other"],
    ["loss", "days", "other"],
    ["loss", "each", "other"],
  ] as const)("of %s by %s is %s", (type, quantityKind, group) => {
    expect(priceGroupOf({ type, quantityKind })).toBe(group);
  });
});

describe("the group of a program's line", () => {
  test.each([
    ["equipment", "equipment"],
    ["hot-wash", "equipment"],
    ["site-works", "equipment"],
    ["seals", "other"],
    ["fees", "fees"],
    ["other-revenue", "other"],
  ] as const)("counted by number, of %s there, is %s", (group, priceGroup) => {
    const type = group === "fees" || group === "other-revenue" ? "revenue" : "program";
    expect(priceGroupOf({ type, quantityKind: "each", group })).toBe(priceGroup);
  });
});

describe("lines in each year", () => {
  const lines = [line("program", "hours", 1000), line("program", "each", 400), line("revenue", "each", -50)];

  it("rise by group from the price year, by hand", () => {
    // Wages 10 % above inflation, mid-2025 to mid-2027 and mid-2028: 1000 x 1.21 + 350, 1000 x 1.331 + 350.
    const rises = risesOf([{ group: "wages", rate: 0.1 }], 2, times);
    const [first, second] = inEachYear(lines, 2, rises);
    expect(first).toBeCloseTo(1560, 9);
    expect(second).toBeCloseTo(1681, 9);
  });

  it("are their plain sum in every year if nothing rises, to the cent", () => {
    const same = inEachYear(lines, 3, new Map());
    expect(same.every((amount) => amount === totalOf(lines).toNumber())).toBe(true);
    const none = risesOf([{ group: "wages", rate: 0 }], 3, times);
    expect(inEachYear(lines, 3, none).map(String)).toEqual(same.map(String));
  });

  it("are worth a growing annuity: with a rise equal to the discount rate, each year counts alike", () => {
    // Closed form of a growing annuity: sum of ((1+e)/(1+r))^t; for e = r it is the number of years.
    const rate = fc.double({ min: 0.001, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(rate, rate, fc.integer({ min: 1, max: 60 }), (rise, discount, years) => {
        // Flows at the years' ends from mid-2027 prices on: t - 1/2 + 1/2 = t years after the prices.
        const own = { priceYear: 2027, startYear: 2027, timing: "end-of-year" as const };
        const amounts = inEachYear(
          [line("program", "hours", 100)],
          years,
          risesOf([{ group: "wages", rate: rise }], years, own),
        );
        const found = amounts.reduce((sum, amount, year) => sum + amount * (1 + discount) ** -(year + 1), 0);
        const q = (1 + rise) / (1 + discount);
        const series = Math.abs(q - 1) < 1e-9 ? years : (q * (1 - q ** years)) / (1 - q);
        // The first flow is half a year after mid-2027.
        expect(relativeGap(found, (100 * series) / Math.sqrt(1 + rise))).toBeLessThan(1e-9);
      }),
      { seed: 81, numRuns: 200 },
    );
    const same = risesOf([{ group: "wages", rate: 0.03 }], 40, { ...times, timing: "mid-year" });
    const worth = inEachYear([line("program", "hours", 100)], 40, same).reduce(
      (sum, amount, year) => sum + amount * 1.03 ** -(year + 1 / 2),
      0,
    );
    // Each of 40 payments is worth 100 x 1.03^1.5: mid-2025 to the start of 2027 is a year and a half.
    expect(relativeGap(worth, 40 * 100 * 1.03 ** 1.5)).toBeLessThan(1e-12);
  });

  it("have as many rises as the study names, each of one group", () => {
    const all = risesOf(
      priceGroups.map((group) => ({ group, rate: 0.01 })),
      4,
      times,
    );
    expect([...all.keys()]).toEqual([...priceGroups]);
    expect(() => risesOf([{ group: "energy", rate: -1 }], 4, times)).toThrow("allowed: above -1");
  });
});
