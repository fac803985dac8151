import { describe, expect, it, test } from "vitest";
import { bearerIds } from "../../../src/model/money/bearer.js";
import { priceGrowth } from "../../../src/model/money/escalation.js";
import { fiscalTable, sumOfRows } from "../../../src/model/money/fiscal-years.js";
import { type CostLine, costLine, moneyOf } from "../../../src/model/money/line.js";
import { priceGroupOf } from "../../../src/model/money/price-group.js";
import { yearsText } from "../../../src/model/money/price-index.js";
import { splitByWeights } from "../../../src/model/money/split.js";
import type { LineGroup } from "../../../src/model/program/groups.js";

describe("a price that grows", () => {
  test.each([
    // By hand: from the middle of 2025 to the start of 2027 are 1.5 years, to its end 2.5.
    [0, 1.03 ** 1.5],
    [1, 1.03 ** 2.5],
    [-1.5, 1],
  ])("by 3 % a year, %d years into year 1", (time, expected) => {
    const times = { priceYear: 2025, startYear: 2027, timing: "mid-year" as const };
    expect(priceGrowth(0.03, time, times)).toBeCloseTo(expected, 12);
  });
});

describe("rows of a budget added up", () => {
  it("keep what lies before and after its fiscal years", () => {
    // By hand, fiscal years from October: 9 months of the first 1,200.00 lie before, 3 of the third 1,200.00 after.
    const settings = { startMonth: 10, years: 2, priceYear: 2027, startYear: 2027, inflation: 0 };
    const lines = [
      { name: "a", byYear: [1200, 1200, 1200] },
      { name: "b", byYear: [600, 600, 600] },
    ];
    const { rows, totals } = fiscalTable(lines, settings);
    expect(sumOfRows("both", rows)).toEqual({
      name: "both",
      cents: [180_000, 180_000],
      total: 360_000,
      before: 135_000,
      after: 45_000,
    });
    expect(totals.before + totals.total + totals.after).toBe(540_000);
  });
});

describe("who pays", () => {
  it("is one bearer, or several by their shares", () => {
    expect(bearerIds("city")).toEqual(["city"]);
    expect(
      bearerIds([
        { id: "city", share: 0.25 },
        { id: "county", share: 0.75 },
      ]),
    ).toEqual(["city", "county"]);
  });
});

describe("money to the cent", () => {
  it("is refused where a plain number cannot hold it", () => {
    // 2^53 cents and one are not told apart.
    expect(() => moneyOf(2 ** 53)).toThrow("9007199254740992 cents: too large to be kept to the cent");
    expect(moneyOf(2 ** 53 - 1).toFixed(2)).toBe("90071992547409.91");
  });

  it("names the amount of a line that is none", () => {
    const draft: Omit<CostLine, "cents"> = {
      structure: "ramp",
      what: "sweeping",
      type: "work",
      bearer: "city",
      quantity: 1e10,
      quantityKind: "area",
      unitRate: 3e7,
      assumptionIds: [],
    };
    expect(() => costLine(draft)).toThrow("ramp: sweeping is not a finite amount: 300000000000000000");
  });

  it("split off a negative amount leaves nothing, and no negative nothing, to who pays none", () => {
    const parts = splitByWeights(-5, [1, 0, 1]);
    expect(parts).toEqual([-3, 0, -2]);
  });
});

describe("the group of a line's price", () => {
  const groupOf = (type: CostLine["type"], quantityKind: CostLine["quantityKind"], group?: LineGroup) =>
    priceGroupOf({ type, quantityKind, group });

  test.each<[CostLine["type"], CostLine["quantityKind"], LineGroup | undefined, string]>([
    // From the meaning of the groups: whose hours they are, what is treated, and what a program buys.
    ["work", "hours", undefined, "labour"],
    ["work", "visits", undefined, "labour"],
    ["program", "hours", undefined, "wages"],
    ["revenue", "hours", undefined, "wages"],
    ["revenue", "each", "fees", "fees"],
    ["loss", "energy", undefined, "energy"],
    ["protection", "energy", undefined, "energy"],
    ["protection", "volume", undefined, "treatment"],
    ["loss", "volume", undefined, "water"],
    ["program", "each", "equipment", "equipment"],
    ["work", "mass", undefined, "other"],
  ])("%s by %s (%s) is %s", (type, quantityKind, group, expected) => {
    expect(groupOf(type, quantityKind, group)).toBe(expected);
  });
});

describe("the years of a price index", () => {
  it("are told in order and in runs, whatever the order of the table", () => {
    const values = new Map([2014, 1981, 1980, 2011, 1982, 2012].map((year) => [year, 100]));
    expect(yearsText({ id: "index", name: "Index", values })).toBe("1980 to 1982, 2011 to 2012, 2014");
  });
});
