import { Decimal } from "decimal.js";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Money } from "../../../src/model/money/decimal.js";
import { amountOf, costLine, type LineDraft, sumOf, totalOf } from "../../../src/model/money/line.js";

const draft: LineDraft = {
  structure: "north-dock",
  what: "cleaning the hull",
  type: "work",
  bearer: "marina",
  quantity: 120,
  quantityKind: "area",
  unitRate: 20,
  assumptionIds: [],
};

describe("a cost line", () => {
  it("costs its quantity times its unit rate, to the cent", () => {
    // By hand: 120 x 20; 0.333 x 10.01 = 3.33333, 3.33 to the cent.
    expect(amountOf(costLine(draft)).toFixed(2)).toBe("2400.00");
    expect(amountOf(costLine({ ...draft, quantity: 0.333, unitRate: 10.01 })).toFixed(2)).toBe("3.33");
  });

  it("keeps within half a cent of the product", () => {
    const factor = fc.double({ min: -1e5, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(factor, factor, (quantity, unitRate) => {
        const line = costLine({ ...draft, quantity, unitRate });
        const product = quantity * unitRate;
        expect(Math.abs(amountOf(line).toNumber() - product)).toBeLessThanOrEqual(
          0.005 + Math.abs(product) * 1e-12,
        );
      }),
      { seed: 13, numRuns: 200 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("refuses a quantity of %d by name", (quantity) => {
    expect(() => costLine({ ...draft, quantity })).toThrow(/north-dock: cleaning the hull/);
  });
});

describe("totals", () => {
  it("add cents without the drift of binary fractions", () => {
    // By hand: ten times 0.10 is 1.00, which binary floating point misses.
    const tenth = new Money("0.10");
    expect(sumOf(Array<Money>(10).fill(tenth)).equals(1)).toBe(true);
    expect(totalOf([]).equals(0)).toBe(true);
  });

  it("do not depend on the order of the lines", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -1e8, max: 1e8 }), { maxLength: 60 }), (cents) => {
        const lines = cents.map((each) => costLine({ ...draft, quantity: each, unitRate: 0.01 }));
        const exact = cents.reduce((sum, each) => sum + each, 0);
        expect(totalOf(lines).times(100).toNumber()).toBe(exact);
        expect(totalOf(lines).equals(totalOf([...lines].reverse()))).toBe(true);
      }),
      { seed: 14, numRuns: 100 },
    );
  });

  it("leave the settings of the shared decimal package alone", () => {
    // decimal.js documents a default precision of 20 significant digits.
    expect(Decimal.precision).toBe(20);
    expect(Money.precision).toBe(28);
  });
});
