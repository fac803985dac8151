import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertedAmount } from "../../src/editor/amounts/converted.js";
import { unitsOffered } from "../../src/editor/amounts/units-offered.js";
import { type DimensionName, dimensions } from "../../src/units/dimensions.js";

const writing = { system: "us", currency: "EUR" } as const;
const names = Object.keys(dimensions) as DimensionName[];

describe("an amount whose unit is changed", () => {
  /** By the definitions of the units: an inch is 25.4 mm, an acre-foot 43,560 ft³, 0 °C is 32 °F. */
  it.each([
    ["36", "in", "mm", "914.4"],
    ["1,200", "acre-ft", "ft3", "52272000"],
    ["30 to 40 to 50", "in", "ft", "2.5 to 3.33333333 to 4.16666667"],
    ["32", "degF", "degC", "0"],
    ["0.05", "$/kWh", "$/MWh", "50"],
    ["2", "€/lb", "€/ton", "4000"],
    ["36 exact", "in", "mm", "914.4 exact"],
    ["1.2e3", "m", "km", "1.2"],
  ])("%s %s in %s is %s", (amount, from, to, told) => {
    expect(convertedAmount(amount, from, to)).toBe(told);
  });

  it("is not converted between currencies, or into what is no unit of it", () => {
    expect(convertedAmount("2", "€/lb", "$/ton")).toBeUndefined();
    expect(convertedAmount("2", "ft", "acre")).toBeUndefined();
    expect(convertedAmount("2", "ft", "")).toBeUndefined();
  });

  it("has a way between any two units that a field offers, and comes back as it was", () => {
    const pairs = names.flatMap((name) => {
      const units = unitsOffered(name, writing);
      return units.flatMap((from) => units.map((to) => [from, to] as const));
    });
    expect(pairs.length).toBeGreaterThan(100);
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.integer({ min: 1, max: 99_999 }), ([from, to], size) => {
        const typed = String(size / 100);
        const there = convertedAmount(typed, from, to) ?? "";
        expect(Number(convertedAmount(there, to, from))).toBeCloseTo(Number(typed), 5);
      }),
      { numRuns: 300 },
    );
  });
});
