import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Chemistry, Lake } from "../../../src/model/lake/lake.js";
import { suitability } from "../../../src/model/lake/suitability.js";
import { assumed } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";

type Scheme = Lake["calciumScheme"];

function suited(chemistry: Chemistry, changes: Partial<Lake> = {}) {
  return suitability({ ...productiveLake, chemistry, ...changes }, assumed);
}

const zebraIn = (chemistry: Chemistry, calciumScheme: Scheme = "whittier") =>
  suited(chemistry, { species: "zebra", calciumScheme });

describe("calcium", () => {
  test.each([
    // Whittier and others 2008: very low below 12, low 12-20, moderate 20-28, high above 28 mg/L. The bounds
    // themselves are ambiguous there; here a bound belongs to the class above it.
    [4.5, "very low"],
    [11.9, "very low"],
    [12, "low"],
    [19.9, "low"],
    [20, "moderate"],
    [27.9, "moderate"],
    [28.1, "high"],
    [60, "high"],
  ])("of %d mg/L is Whittier's class %s", (calcium, expected) => {
    expect(zebraIn({ calcium }).variables[0]?.class).toBe(expected);
    expect(suited({ calcium }).variables[0]?.class).toBe(expected);
  });

  test.each([
    // Mackie and Claudi 2010 (from memory): none below 8, low 8-15, moderate 15-30, high above 30 mg/L.
    [7.9, "none"],
    [8.1, "low"],
    [14.9, "low"],
    [15.1, "moderate"],
    [29.9, "moderate"],
    [30.1, "high"],
  ])("of %d mg/L is Mackie and Claudi's class %s", (calcium, expected) => {
    expect(zebraIn({ calcium }, "mackie-claudi").variables[0]?.class).toBe(expected);
  });

  it("is reported by the other scheme as well, where the two disagree", () => {
    // 16 mg/L is low to Whittier and others and moderate to Mackie and Claudi.
    const byWhittier = zebraIn({ calcium: 16 });
    const byMackie = zebraIn({ calcium: 16 }, "mackie-claudi");
    expect([byWhittier.limiting.class, byWhittier.otherCalciumScheme.class]).toEqual(["low", "moderate"]);
    expect([byMackie.limiting.class, byMackie.otherCalciumScheme.class]).toEqual(["moderate", "low"]);
  });

  it("too low for juvenile growth is at most very low", () => {
    // Hincks and Mackie 1997, abstract: juvenile growth negative below 8.5 mg/L; best at 32 mg/L.
    expect(zebraIn({ calcium: 8.4 }).weight).toBeLessThanOrEqual(assumed("suitability.weight.very-low"));
    expect(zebraIn({ calcium: 32 }).weight).toBe(assumed("suitability.weight.high"));
  });

  it("of 12 mg/L and less leaves quagga mussels a chance, since adults lived and grew there", () => {
    // Davis and others 2015, abstract: survival, growth and reproductive potential at 12 mg/L; at 9 mg/L adults died
    // within 170 days.
    for (const scheme of ["whittier", "mackie-claudi"] as const) {
      expect(suited({ calcium: 12 }, { calciumScheme: scheme }).weight).toBeGreaterThan(0);
      const soft = suited({ calcium: 4.5 }, { calciumScheme: scheme });
      expect(soft.limiting.class).toBe("very low");
      expect(soft.weight).toBeGreaterThan(0);
      expect(soft.weight).toBeLessThan(assumed("suitability.weight.low"));
    }
  });

  it("never makes a lake less suitable by being higher", () => {
    const value = fc.double({ min: 0, max: 80, noNaN: true });
    fc.assert(
      fc.property(value, value, fc.constantFrom("whittier", "mackie-claudi"), (a, b, scheme) => {
        const low = zebraIn({ calcium: Math.min(a, b) }, scheme as Scheme).weight;
        expect(zebraIn({ calcium: Math.max(a, b) }, scheme as Scheme).weight).toBeGreaterThanOrEqual(low);
      }),
      { seed: 121, numRuns: 200 },
    );
  });
});

describe("alkalinity and hardness", () => {
  it("too low for juvenile growth are none to zebra mussels", () => {
    // Hincks and Mackie 1997, abstract: negative growth below alkalinity 17.1 mg/L.
    expect(zebraIn({ calcium: 60, alkalinity: 17 }).limiting).toMatchObject({
      variable: "alkalinity",
      class: "none",
    });
    expect(zebraIn({ calcium: 60, hardness: 29 }).limiting).toMatchObject({
      variable: "hardness",
      class: "none",
    });
  });

  it("of 100 mg/L hardness, the best for juveniles, is high", () => {
    // Hincks and Mackie 1997, abstract: best growth at hardness 100.
    expect(zebraIn({ calcium: 60, hardness: 100 }).weight).toBe(assumed("suitability.weight.high"));
  });
});

describe("pH", () => {
  test.each([
    // Bureau of Reclamation 2008: very low below 6.5 or above 9.0, low 6.5-7.0, moderate 7.0-7.4 and 8.5-9.0, high
    // 7.4-8.5; to zebra mussels very low is none here.
    [6.4, "none"],
    [6.8, "low"],
    [7.2, "moderate"],
    [7.7, "high"],
    [8.4, "high"],
    [8.8, "moderate"],
    [9.1, "none"],
  ])("of %d is the class %s", (ph, expected) => {
    expect(zebraIn({ calcium: 60, ph }).variables.find(({ variable }) => variable === "pH")?.class).toBe(
      expected,
    );
  });
});

describe("the warmest month", () => {
  test.each([
    // Bureau of Reclamation 2008: high 17-25, moderate 25-27. Mackie and Claudi 2010 (from memory): none below 10 or
    // above 32 degrees, moderate from 10.
    [9, "none"],
    [15, "moderate"],
    [22, "high"],
    [26, "moderate"],
    [29, "low"],
    [33, "none"],
  ])("of %d degrees is the class %s", (temperature, expected) => {
    const mixed = everyMonth(temperature);
    const lake: Partial<Lake> = { species: "zebra", surfaceTemperature: mixed, deepTemperature: mixed };
    expect(suited({ calcium: 60 }, lake).limiting.class).toBe(expected);
  });
});

describe("the limiting variable", () => {
  it("rules: the lake has the lowest weight of its variables, whichever that is", () => {
    const chemistry = fc.record({
      calcium: fc.double({ min: 2, max: 60, noNaN: true }),
      ph: fc.double({ min: 6, max: 10, noNaN: true }),
      alkalinity: fc.double({ min: 5, max: 150, noNaN: true }),
      oxygen: fc.double({ min: 1, max: 12, noNaN: true }),
      salinity: fc.double({ min: 0, max: 15, noNaN: true }),
    });
    fc.assert(
      fc.property(chemistry, fc.constantFrom("zebra" as const, "quagga" as const), (water, species) => {
        const { weight, limiting, variables } = suited(water, { species });
        expect(variables).toHaveLength(6);
        expect(weight).toBe(Math.min(...variables.map((each) => each.weight)));
        expect(limiting.weight).toBe(weight);
        expect(variables).toContain(limiting);
      }),
      { seed: 122, numRuns: 200 },
    );
  });

  it("is not a variable that was not measured", () => {
    expect(suited({ calcium: 40 }).variables.map(({ variable }) => variable)).toEqual([
      "calcium",
      "temperature of the warmest month",
    ]);
  });

  test.each([
    // Mackie and Claudi 2010 (from memory): conductivity none below 30, low 30-60, moderate 60-110 µS/cm. Bureau of
    // Reclamation 2008: salinity high to 1, moderate to 4, low to 10 g/L. A bound belongs to the better class.
    [{ conductivity: 29 }, "none"],
    [{ conductivity: 30 }, "low"],
    [{ conductivity: 60 }, "moderate"],
    [{ conductivity: 110 }, "high"],
    [{ salinity: 0 }, "high"],
    [{ salinity: 1 }, "high"],
    [{ salinity: 4 }, "moderate"],
    [{ salinity: 10 }, "low"],
    [{ salinity: 10.1 }, "none"],
  ])("is for %j of class %s", (chemistry, expected) => {
    expect(zebraIn({ calcium: 60, ...chemistry }).variables.map((each) => each.class)).toContain(expected);
    expect(zebraIn({ calcium: 60, ...chemistry }).limiting.class).toBe(expected);
  });

  it("names the assumptions behind it, of what was measured", () => {
    const { assumptionIds } = zebraIn({ calcium: 60, salinity: 1 });
    expect(assumptionIds).toEqual(
      expect.arrayContaining(["suitability.calcium.whittier.high-from", "suitability.salinity.high-to"]),
    );
    expect(assumptionIds.some((id) => id.startsWith("suitability.oxygen"))).toBe(false);
  });

  it("is salinity in brackish water and oxygen in stagnant water", () => {
    // Bureau of Reclamation 2008: salinity very low above 10 g/L, low 4-10; oxygen very low below 4, low 4-6 mg/L.
    expect(zebraIn({ calcium: 60, salinity: 9 }).limiting).toMatchObject({
      variable: "salinity",
      class: "low",
    });
    expect(zebraIn({ calcium: 60, salinity: 13 }).weight).toBe(0);
    expect(zebraIn({ calcium: 60, oxygen: 5 }).limiting).toMatchObject({ class: "low", value: 5 });
    expect(zebraIn({ calcium: 60, oxygen: 2 }).weight).toBe(0);
  });
});

describe("the weight of water near a bound of its class", () => {
  it("has no step: a ten-thousandth more moves it by less than two hundredths", () => {
    const variables = {
      calcium: fc.double({ min: 1, max: 60, noNaN: true }),
      ph: fc.double({ min: 5, max: 11, noNaN: true }),
      alkalinity: fc.double({ min: 1, max: 150, noNaN: true }),
      hardness: fc.double({ min: 1, max: 150, noNaN: true }),
      oxygen: fc.double({ min: 0.5, max: 14, noNaN: true }),
      conductivity: fc.double({ min: 5, max: 300, noNaN: true }),
      salinity: fc.double({ min: 0.1, max: 15, noNaN: true }),
    } as const;
    for (const [variable, values] of Object.entries(variables)) {
      fc.assert(
        fc.property(values, fc.constantFrom("zebra" as const, "quagga" as const), (value, species) => {
          const weightOf = (of: number) =>
            suited({ calcium: 60, [variable]: of }, { species }).variables.find(
              (each) =>
                each.variable ===
                (variable === "ph" ? "pH" : variable === "oxygen" ? "dissolved oxygen" : variable),
            )?.weight ?? Number.NaN;
          expect(Math.abs(weightOf(value * 1.0001) - weightOf(value))).toBeLessThan(0.02);
        }),
        { seed: 123, numRuns: 400 },
      );
    }
  });

  it("leads from one class to the next over the quarter of the poorer class next to the bound", () => {
    // By hand: calcium 19 mg/L lies halfway between 18, where low water ends to lead, and 20, where moderate begins.
    const [low, moderate] = [assumed("suitability.weight.low"), assumed("suitability.weight.moderate")];
    expect(zebraIn({ calcium: 18 }).weight).toBe(low);
    expect(zebraIn({ calcium: 19 }).weight).toBeCloseTo((low + moderate) / 2, 14);
    expect(zebraIn({ calcium: 20 }).weight).toBe(moderate);
    // Below the lowest bound over a quarter of the low class: 10 to 12 mg/L, with 11 halfway.
    const veryLow = assumed("suitability.weight.very-low");
    expect(zebraIn({ calcium: 10 }).weight).toBe(veryLow);
    for (const at of [suited, zebraIn])
      expect(at({ calcium: 11 }).weight).toBeCloseTo((veryLow + low) / 2, 14);
  });

  it("does not fall where a warm surface lies over water that stays cool", () => {
    const warm = { species: "zebra" as const, surfaceTemperature: everyMonth(29) };
    const high = assumed("suitability.weight.high");
    expect(suited({ calcium: 60 }, { ...warm, deepTemperature: everyMonth(14) }).weight).toBe(high);
    expect(suited({ calcium: 60 }, { ...warm, deepTemperature: everyMonth(29) }).weight).toBeLessThan(high);
  });
});
