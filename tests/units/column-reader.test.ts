import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { columnReader, parseQuantity, QuantityError } from "../../src/units/quantity.js";

describe("a column with its unit in the head", () => {
  it.each([
    // an international foot is 0.3048 m exactly (agreement of 1959)
    ["ft", "2,135.4", 2135.4 * 0.3048],
    ["m", "650.25", 650.25],
    ["cm", "-12", -0.12],
    ["m", " 1e2 ", 100],
  ])("in %s reads %s", (unit, text, metres) => {
    expect(columnReader(unit, "elevation")(text)).toBeCloseTo(metres, 10);
  });

  it.each([
    // the Fahrenheit scale: water freezes at 32 and boils at 212 degrees
    ["degF", "32", 0],
    ["degC", "20", 20],
    // 0 °C is 273.15 K by definition
    ["K", "273.15", 0],
  ])("in %s minds where its scale begins", (unit, text, celsius) => {
    expect(columnReader(unit, "temperature")(text)).toBeCloseTo(celsius, 10);
  });

  it.each(["ft", "m", "in", "mile"])("in %s agrees with the same quantities written out", (unit) => {
    const read = columnReader(unit, "elevation");
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (hundredths) => {
        const text = String(hundredths / 100);
        const { value } = parseQuantity(`${text} ${unit}`, "elevation");
        expect(Math.abs(read(text) - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
      }),
    );
  });

  it.each(["", "kg", "ft2", "1 ft", "furlongs of old", "m".repeat(5000)])(
    "is refused in the unit %j",
    (unit) => {
      expect(() => columnReader(unit, "elevation")).toThrow(QuantityError);
    },
  );

  it.each(["", "ice", "12 ft", "1,2345", "100,5", "1 200", "NaN", "Infinity", "0x10", "9".repeat(61)])(
    "refuses the value %j",
    (text) => {
      expect(() => columnReader("ft", "elevation")(text)).toThrow(/a number such as 1240\.5/);
    },
  );

  it("refuses what its dimension does not allow, after conversion", () => {
    expect(() => columnReader("degF", "temperature")("200")).toThrow(/at most 60 °C/);
    expect(() => columnReader("ft", "length")("-1")).toThrow(/at least 0/);
    expect(() => columnReader("ft", "elevation")("1e999")).toThrow(/finite/);
  });
});
