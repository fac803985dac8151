import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { parseQuantity, QuantityError } from "../../src/units/quantity.js";
import { parseSpread } from "../../src/units/spread.js";

// an international foot is 0.3048 m exactly (agreement of 1959)
const squareFoot = 0.3048 ** 2;

describe("a quantity with a range", () => {
  test.each([
    ["6 to 9 to 14 $/m2", "moneyPerArea", 6, 9, 14, "pert"],
    ["$6 to $9 to $14/m2", "moneyPerArea", 6, 9, 14, "pert"],
    ["USD 6 to USD 9 to USD 14/m2", "moneyPerArea", 6, 9, 14, "pert"],
    ["$6/m2 to $9/m2 to $14/m2 as triangular", "moneyPerArea", 6, 9, 14, "triangular"],
    ["10 to 20 % as uniform", "share", 0.1, 0.15, 0.2, "uniform"],
    ["100 to 300 ft2", "area", 100 * squareFoot, 200 * squareFoot, 300 * squareFoot, "uniform"],
    ["1,000 to 4,000 m2 as lognormal", "area", 1000, 2000, 4000, "lognormal"],
    ["10 to 30 degC as normal", "temperature", 10, 20, 30, "normal"],
    ["-5 to 0 to 5 degC", "temperature", -5, 0, 5, "pert"],
    ["32 to 50 to 68 degF", "temperature", 0, 10, 20, "pert"],
    ["50 ± 18 degF", "temperature", 0, 10, 20, "pert"],
    ["80 ± 10 %", "share", 0.7, 0.8, 0.9, "pert"],
    ["0.8 ± 0.1", "share", 0.7, 0.8, 0.9, "pert"],
    ["2,000 ft2 ± 10 %", "area", 1800 * squareFoot, 2000 * squareFoot, 2200 * squareFoot, "pert"],
    ["$250 ± 20 %", "money", 200, 250, 300, "pert"],
    ["$9 ± 3/m2", "moneyPerArea", 6, 9, 12, "pert"],
  ] as const)("%s", (text, dimension, low, alone, high, kind) => {
    const { value, spread, text: kept } = parseSpread(text, dimension);
    expect(kept).toBe(text);
    expect(value).toBeCloseTo(alone, 10);
    if (spread?.kind !== kind) throw new Error(`read as ${spread?.kind}`);
    expect([spread.low, spread.high].map((bound) => Number(bound.toFixed(9)))).toEqual(
      [low, high].map((bound) => Number(bound.toFixed(9))),
    );
  });

  it("may be one of some values with their shares", () => {
    const { value, spread } = parseSpread("one of $2,000 (30 %), $5,000 (70 %)", "money");
    expect(value).toBe(5000);
    expect(spread).toEqual({
      kind: "discrete",
      choices: [
        { value: 2000, share: 0.3 },
        { value: 5000, share: 0.7 },
      ],
    });
  });

  it("is one value that is known for certain where it is called exact", () => {
    expect(parseSpread("42 ft exact", "length")).toEqual({
      ...parseQuantity("42 ft", "length"),
      ...{ text: "42 ft exact", exact: true },
    });
  });

  it("is read as a single value where it is one", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (feet) => {
        const text = `${feet} ft`;
        expect(parseSpread(text, "length")).toEqual(parseQuantity(text, "length"));
      }),
    );
  });

  test.each([
    ["9 to 6 to 14 m2", "area", /rises from low to high/],
    ["6 to 6 m2", "area", /rises from low to high/],
    ["6 to 9 to 14 to 20 m2", "area", /a range such as/],
    ["6 to 14 m2 as pert", "area", /a range such as/],
    ["6 to 9 to 14 m2 as lognormal", "area", /a range such as/],
    ["0 to 14 m2 as lognormal", "area", /above zero/],
    ["6 to 14", "area", /area such as/],
    ["0.9 ± 0.3", "share", /at most 100 %/],
    ["90 ± 30 %", "share", /at most 100 %/],
    ["$5 ± 120 %", "money", /at least 0/],
    ["6 to 9 to 14 m2 exact", "area", /one value before "exact"/],
    ["exact", "area", /area such as/],
    ["6 to nine to 14 m2", "area", /area such as/],
    ["6 to 9 to 14 kg", "area", /area such as/],
    ["50 to 80 to 120 %", "share", /at most 100 %/],
    ["6 m2 as pert", "area", /a range such as/],
    ["one of 2 h (60 %), 5 h (30 %)", "hours", /add up to 100 %, not 90 %/],
    ["one of 2 h, 5 h (30 %)", "hours", /choices with their shares/],
    [`6 to 9 to 14 ${"m".repeat(200)}`, "area", /at most 160 characters/],
  ] as const)("is refused: %s", (text, dimension, message) => {
    expect(() => parseSpread(text, dimension)).toThrow(QuantityError);
    expect(() => parseSpread(text, dimension)).toThrow(message);
  });
});
