import { describe, expect, it } from "vitest";
import { type FundingSource, fundedBudget } from "../../../src/model/program/sources.js";

const row = (name: string, ...cents: readonly number[]) => ({
  ...{ name, cents, total: cents.reduce((sum, each) => sum + each, 0) },
  ...{ before: 0, after: 0 },
});
/** Costs of 1,000, 700 and 900 in three fiscal years, of which fees bring 100 each year; in cents, as all here. */
const budget = {
  years: [2027, 2028, 2029].map((year) => ({ startYear: year, endYear: year })),
  parts: {
    purchases: row("Purchases", 300, 0, 200),
    once: row("To start", 100, 0, 0),
    ongoing: row("Every year", 700, 800, 800),
    revenue: row("Revenue", -100, -100, -100),
  },
};
const source = (terms: Partial<FundingSource>): FundingSource => ({
  name: "Grant",
  paysFor: ["ongoing"],
  ...terms,
});
const beside = { contingency: [50, 50, 50], carriedIn: 0 };
const paidBy = (terms: Partial<FundingSource>) =>
  fundedBudget(budget, [source(terms)], beside).sources[0]?.cents;

describe("what a source pays in a fiscal year, by hand", () => {
  it("is its share or its amount of what it may pay for", () => {
    expect(paidBy({ share: 0.25 })).toEqual([175, 200, 200]);
    expect(paidBy({ amount: 150 })).toEqual([150, 150, 150]);
    expect(paidBy({ paysFor: ["purchases", "once"] })).toEqual([400, 0, 200]);
    expect(fundedBudget(budget, [source({})], beside).sources[0]?.eligible).toEqual([700, 800, 800]);
  });

  it("is no more than its cap, nor than what others match, nor than is left", () => {
    expect(paidBy({ share: 0.5, cap: 360 })).toEqual([350, 360, 360]);
    // Others must pay 75 % of 700 and of 800.
    expect(paidBy({ amount: 500, match: 0.75 })).toEqual([175, 200, 200]);
    expect(paidBy({ amount: 900 })).toEqual([700, 700, 800]);
  });

  it("is paid in its fiscal years alone, and missed in the first without it", () => {
    const terms = source({ amount: 150, from: 2028, to: 2028 });
    expect(fundedBudget(budget, [terms], beside).sources[0]).toMatchObject({
      cents: [0, 150, 0],
      ends: { year: 2029, lost: 150 },
    });
    for (const to of [2026, 2029, undefined])
      expect(fundedBudget(budget, [source({ amount: 150, to })], beside).sources[0]?.ends).toBeUndefined();
  });
});

describe("what is asked of the fund, by hand", () => {
  it("is what the sources leave, in their order, with the contingency", () => {
    const funded = fundedBudget(
      budget,
      [source({ amount: 600 }), source({ name: "Partner", share: 1 })],
      beside,
    );
    expect(funded.sources.map(({ cents }) => cents)).toEqual([
      [600, 600, 600],
      [400, 100, 300],
    ]);
    expect(funded.fund).toEqual([50, 50, 50]);
    expect(funded.contingency).toEqual([50, 50, 50]);
  });

  it("is less by what is carried in, which pays contingencies too and lasts until it is used up", () => {
    const funded = fundedBudget(budget, [source({ amount: 500 })], { ...beside, carriedIn: 900 });
    // 1,000 − 500 + 50 = 550, then 250 of 700 − 500 + 50, then the last 100 of 900 − 500 + 50.
    expect(funded.carriedIn).toEqual([550, 250, 100]);
    expect(funded.fund).toEqual([0, 0, 350]);
  });
});
