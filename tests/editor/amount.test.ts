import { describe, expect, it } from "vitest";
import { amountOf, quantityText } from "../../src/editor/amounts/amount.js";
import { unitsOffered } from "../../src/editor/amounts/units-offered.js";
import { type DimensionName, dimensions } from "../../src/units/dimensions.js";
import { parseSpread } from "../../src/units/spread.js";

const names = Object.keys(dimensions) as DimensionName[];
const american = { system: "us", currency: "USD" } as const;

describe("an amount with the unit chosen beside it", () => {
  it.each(names)("can be read with every unit offered for %s, alone and as a range", (dimension) => {
    for (const currency of ["USD", "EUR", "CHF"]) {
      for (const unit of unitsOffered(dimension, { system: "si", currency })) {
        expect(
          () => parseSpread(quantityText({ amount: "0.5", unit }, dimension) ?? "", dimension),
          unit,
        ).not.toThrow();
        const range = quantityText({ amount: "0.2 to 0.5 to 0.9", unit }, dimension) ?? "";
        expect(parseSpread(range, dimension).spread?.kind, range).toBe("pert");
      }
    }
  });

  it.each([
    ["elevation", "2,086 ft", { amount: "2,086", unit: "ft" }],
    ["moneyPerVolume", "$310/acre-ft", { amount: "310", unit: "$/acre-ft" }],
    ["moneyPerArea", "6 to 9 to 14 $/ft2", { amount: "6 to 9 to 14", unit: "$/ft2" }],
    ["flow", "one of 2 cfs (60 %), 5 cfs (40 %)", { amount: "one of 2 cfs (60 %), 5 cfs (40 %)", unit: "" }],
    ["share", 0.35, { amount: "0.35", unit: "" }],
    ["length", "42 ft exact", { amount: "42 exact", unit: "ft" }],
    ["money", "$900 exact", { amount: "900 exact", unit: "$" }],
  ] as const)("of %s is %s apart and together", (dimension, value, apart) => {
    expect(amountOf(value, dimension, american)).toEqual(apart);
    expect(quantityText(apart, dimension)).toBe(String(value));
  });

  it("with a unit of its own is taken as typed", () => {
    expect(quantityText({ amount: "378 m", unit: "ft" }, "elevation")).toBe("378 m");
    expect(quantityText({ amount: "€5", unit: "$" }, "money")).toBe("€5");
  });

  it("that is empty is no value", () => {
    expect(quantityText({ amount: "  ", unit: "ft" }, "elevation")).toBeUndefined();
  });
});
