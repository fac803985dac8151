import { describe, expect, it } from "vitest";
import { conversionBetween } from "../../src/units/unit-conversion.js";

describe("a number in one unit", () => {
  // 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, 1 US gallon = 3.785411784 L, by definition; the year of the converter, 31,556,926 s
  it.each([
    [15, "mm", "m", 0.015],
    [1e-290, "mm", "m", 0],
    [40, "%", "share", 0.4],
    [2, "%/yr", "1/yr", 0.02],
    [0.3, "1", "share", 0.3],
    [48, "h", "d", 2],
    [1, "yr", "d", 31_556_926 / 86_400],
    [53.6, "degF", "degC", 12],
    [32, "°F", "degC", 0],
    [273.15, "K", "degC", 0],
    [12, "°C", "degC", 12],
    [1, "mgd", "m3/s", (3.785411784 * 1000) / 86_400],
    [7, "g/m3", "mg/L", 7],
    [1, "lb/ft3", "kg/m3", 0.45359237 / 0.3048 ** 3],
    [60, "$/ft2", "$/m2", 60 / 0.3048 ** 2],
    [57.63, "$/short ton", "$/kg", 57.63 / 907.18474],
    [20_000, "$/cfs", "$/(m3/s)", 20_000 / 0.3048 ** 3],
    [1.5, "$ / min", "$/h", 90],
    [1, "m2.K/W", "m2K/W", 1],
    [1, "1/degF.d", "1/degC.d", 1.8],
    [3600, "kJ/m3.K", "kWh/m3.K", 1],
    [1.3, "mm2/s", "m2/s", 1.3e-6],
  ])("%d %s in %s", (value, from, to, expected) => {
    expect(conversionBetween(from, to)?.(value)).toBeCloseTo(expected, 9);
  });

  it("stays as it is to the last bit in the unit that it has, by whatever name", () => {
    const odd = 0.1 + 0.2;
    for (const [from, to] of [
      ["m", "m"],
      ["1", "share"],
      ["$/(m3/s)", "$ / (m3/s)"],
    ] as const) {
      expect(conversionBetween(from, to)?.(odd)).toBe(odd);
    }
  });

  it("has no last bit more than what was typed", () => {
    expect(conversionBetween("mm", "m")?.(15)).toBe(0.015);
    expect(conversionBetween("degF", "degC")?.(53.6)).toBe(12);
    expect(conversionBetween("%", "share")?.(7)).toBe(0.07);
  });

  it.each([
    ["s", "m"],
    ["$/kg", "$/h"],
    ["$", "$/h"],
    ["$/h", "$"],
    ["h", "$/h"],
    ["$/h", "h"],
    ["€/h", "$/h"],
    ["s/m", "m/s"],
    ["share", "1/yr"],
    ["degC", "m"],
    ["m", "degC"],
    ["tempF", "degC"],
    ["10 mm", "m"],
    ["tile", "m"],
    ["$/tile", "$/m2"],
    ["", "m"],
    ["constructor", "m"],
    ["m".repeat(1000), "m"],
  ])("is not turned from %s into %s", (from, to) => {
    expect(conversionBetween(from, to)).toBeUndefined();
  });
});
