import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { suitability } from "../../../src/model/lake/suitability.js";
import { growLayers, growthParameters, yearlyMortality } from "../../../src/model/mussels/growth.js";
import { type Layer, layerThickness } from "../../../src/model/mussels/layer.js";
import type { Place } from "../../../src/model/mussels/surface.js";
import { assumed, numbersBy } from "../assumptions.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { relativeGap } from "../near.js";
import { growth, stillSurface } from "./growing.js";

interface Growth {
  readonly lake?: Lake;
  readonly place?: Place;
  readonly years?: number;
  readonly density?: number;
  readonly cleanAfter?: (month: number) => boolean;
}

/** The layer of each month on a still surface from a bare start in January. */
function grown(input: Growth): Layer[] {
  const { lake = productiveLake, place = { at: "floating", depth: 1 }, years = 8, density = 1 } = input;
  const surface = stillSurface(place, lake);
  const densities = Array<number>(years * 12).fill(density);
  return growLayers({ surface, density: densities, cleanAfter: input.cleanAfter ?? (() => false) }, growth);
}

const last = (layers: readonly Layer[]): Layer => {
  const layer = layers.at(-1);
  if (!layer) throw new Error("no month was grown");
  return layer;
};

/** The invented lake with a summer peak at another temperature. */
const withSummer = (peak: number): Lake => ({
  ...productiveLake,
  surfaceTemperature: productiveLake.surfaceTemperature.map((each) => 4 + ((each - 4) * (peak - 4)) / 20),
});

describe("a mature layer that nobody touches", () => {
  test.each([20, 22, 24, 26, 28])("weighs 1 to 15 kg/m2 in a lake with %d degrees in summer", (peak) => {
    // Over 12 kg/m2 in heated lakes (Konin lakes, abstract): 1 to 15 is accepted.
    const { mass } = last(grown({ lake: withSummer(peak), years: 10 }));
    expect(mass).toBeGreaterThan(1);
    expect(mass).toBeLessThan(15);
  });

  test.each([20, 22, 24, 26, 28])("counts 5,000 to 30,000 mussels at %d degrees in summer", (peak) => {
    // Common on structures (Miller and others 1992, Leach 1993, as cited by the Colorado Water Conservation Board).
    const { number } = last(grown({ lake: withSummer(peak), years: 10 }));
    expect(number).toBeGreaterThan(5000);
    expect(number).toBeLessThan(30_000);
  });

  it("is 20 to 75 mm thick", () => {
    // Working range for racks and pipes (from memory).
    const { thickness } = last(grown({ years: 10 }));
    expect(thickness).toBeGreaterThan(0.02);
    expect(thickness).toBeLessThan(0.075);
  });

  it("is thinner where fewer larvae settle", () => {
    const thickness = [0.05, 0.2, 0.6, 1].map((density) => last(grown({ density, years: 2 })).thickness);
    expect(thickness).toEqual([...thickness].sort((a, b) => a - b));
  });
});

describe("a layer answers to what thins settlers", () => {
  const thickestOf = (layers: readonly Layer[]) => Math.max(...layers.map(({ thickness }) => thickness));
  const untouched = (density: number) => thickestOf(grown({ density, years: 10 }));

  it("is at most half as thick where settlers are twenty times fewer", () => {
    // Common practice, no source: crowding does not make up for settlers that never came.
    expect(untouched(1 / 20)).toBeLessThan(untouched(1) / 2);
  });

  it("is under 3 mm behind a strainer and ultraviolet light", () => {
    // Power magazine 2019: the mussels in the cooling systems of Parker Dam were virtually eliminated.
    expect(untouched(assumed(numbersBy("filter").settlementFactor))).toBeLessThan(0.003);
  });

  it("is under 2 mm in water of 4.5 mg/L calcium", () => {
    // Davis and others 2015, abstract: at 9 and 12 mg/L 99 % of adults are dead within 170 days.
    const softLake: Lake = { ...productiveLake, chemistry: { calcium: 4.5 } };
    const { weight } = suitability(softLake, assumed);
    const { months, table } = stillSurface({ at: "floating", depth: 1 }, softLake);
    const inSoftWater = growthParameters(assumed, { ...growth, suitability: weight });
    const density = Array<number>(120).fill(weight);
    expect(thickestOf(growLayers({ surface: { months, table }, density }, inSoftWater))).toBeLessThan(0.002);
  });
});

describe("deaths in water that suits mussels less", () => {
  const left = (weight: number, days: number) => Math.exp((-yearlyMortality(weight, assumed) * days) / 365);

  it("leave one adult in a hundred after 170 days in very soft water", () => {
    // Davis and others 2015, abstract, at 9 and 12 mg/L.
    expect(left(assumed("suitability.weight.very-low"), 170)).toBeCloseTo(0.01, 2);
  });

  it("let adults outlast a year from 15 mg/L on", () => {
    // Davis and others 2015, abstract; by hand, more than a tenth of them are taken as adults that last.
    const { weight } = suitability({ ...productiveLake, chemistry: { calcium: 15 } }, assumed);
    expect(left(weight, 365)).toBeGreaterThan(0.1);
  });

  it("are the usual ones where the water suits them, and take all where it does not", () => {
    expect(yearlyMortality(1, assumed)).toBe(assumed("growth.yearly-mortality"));
    expect(left(0, 1)).toBe(0);
  });
});

describe("a layer of one season", () => {
  it("is 10 to 20 mm thick in a warm, productive lake", () => {
    // Single layer in year 1 (from memory); 24 degrees in summer are taken as warm and productive.
    const { thickness } = last(grown({ years: 1 }));
    expect(thickness).toBeGreaterThan(0.01);
    expect(thickness).toBeLessThan(0.02);
  });

  it("is heavy within a year", () => {
    // Parker Dam: heavy within one year, late 2007 (Bureau of Reclamation). More than 1 kg/m2 is taken as heavy.
    expect(last(grown({ years: 1 })).mass).toBeGreaterThan(1);
  });
});

describe("any layer", () => {
  const lakes = fc
    .record({
      peak: fc.double({ min: 10, max: 29, noNaN: true }),
      low: fc.integer({ min: 80, max: 100 }),
      elevation: fc.integer({ min: 75, max: 101 }),
      density: fc.double({ min: 0.01, max: 1, noNaN: true }),
    })
    .map(({ peak, low, elevation, density }) => ({
      lake: {
        ...withSummer(peak),
        drawdown: [
          { dayOfYear: 40, elevation: low },
          { dayOfYear: 150, elevation: 100 },
        ],
      },
      place: { at: "elevation" as const, elevation },
      density,
    }));

  it("covers at most what the limit allows and never has a negative part", () => {
    fc.assert(
      fc.property(lakes, (input) => {
        for (const layer of grown({ ...input, years: 6 })) {
          expect(layer.cover).toBeLessThanOrEqual(growth.coverLimit * (1 + 1e-9));
          expect(Math.min(layer.number, layer.mass, layer.thickness, layer.killed)).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed: 91, numRuns: 60 },
    );
  });

  it("has a length for which number times length squared is the cover", () => {
    fc.assert(
      fc.property(lakes, (input) => {
        for (const { number, lengthMm, cover } of grown({ ...input, years: 3 })) {
          if (number > 0) expect(relativeGap(number * (lengthMm / 1000) ** 2, cover)).toBeLessThan(1e-9);
        }
      }),
      { seed: 92, numRuns: 40 },
    );
  });

  it("takes the room of its mass, so that a few shells on a wall are no layer", () => {
    // By hand: 10 kg/m2 at 500 kg/m3 are 20 mm, and 1 kg/m2, however long its shells, 2 mm.
    expect(layerThickness(10, 500)).toBeCloseTo(0.02, 12);
    expect(layerThickness(1, 500)).toBeCloseTo(0.002, 12);
  });

  it("is about one shell thick where it is as crowded as it can be", () => {
    // By hand: 6,400 mussels of 25 mm cover 4; of 1.98 g each (Kehne 2022) they weigh 12.7 kg/m2, 25 mm at 500 kg/m3.
    const mass = (growth.coverLimit / 0.025 ** 2) * 1.98e-3;
    expect(layerThickness(mass, growth.bulkDensity)).toBeCloseTo(0.0253, 4);
  });

  it("does not grow where no mussels are", () => {
    expect(last(grown({ density: 0 }))).toEqual({
      number: 0,
      lengthMm: 0,
      cover: 0,
      mass: 0,
      thickness: 0,
      killed: 0,
      shed: 0,
    });
  });
});

describe("dead litter", () => {
  it("comes from dry runs alone", () => {
    const killed = (layers: readonly Layer[]) => layers.reduce((sum, layer) => sum + layer.killed, 0);
    expect(killed(grown({}))).toBe(0);
    expect(killed(grown({ lake: drawnDownLake }))).toBe(0);
    expect(killed(grown({ lake: drawnDownLake, place: { at: "elevation", elevation: 88 } }))).toBe(0);
    expect(killed(grown({ lake: drawnDownLake, place: { at: "elevation", elevation: 95 } }))).toBeGreaterThan(
      1,
    );
  });

  it("falls in the months of the dry run and weighs no more than what stood there", () => {
    const layers = grown({ lake: drawnDownLake, place: { at: "elevation", elevation: 95 } });
    layers.forEach(({ killed }, month) => {
      expect(killed).toBeLessThanOrEqual((layers[month - 1]?.mass ?? 0) * (1 + 1e-9));
      if (month % 12 > 1) expect(killed).toBe(0);
    });
  });

  it("of a summer drawdown weighs what stood there before it, since nothing grows in the dry", () => {
    // Bare from the middle of June: warm, half-dry air for weeks (Ricciardi and others 1995: dead within days).
    const summer: Lake = {
      ...productiveLake,
      drawdown: [
        { dayOfYear: 164, elevation: 100 },
        { dayOfYear: 166, elevation: 90 },
        { dayOfYear: 200, elevation: 90 },
        { dayOfYear: 202, elevation: 100 },
      ],
    };
    const layers = grown({ lake: summer, place: { at: "elevation", elevation: 95 } });
    for (const june of [17, 29, 41]) {
      const before = layers[june - 1]?.mass ?? Number.NaN;
      expect(layers[june]?.killed).toBeGreaterThan(0.9 * before);
      expect(layers[june]?.killed).toBeLessThanOrEqual(before);
    }
  });

  it("of a hard winter drawdown leaves next to nothing alive in the exposed zone", () => {
    const layers = grown({ lake: drawnDownLake, place: { at: "elevation", elevation: 95 } });
    // The end of February after a full season: January at -3 degrees is far beyond 6 hours of frost (Payne 1992).
    expect(layers[13]?.mass).toBeLessThan(0.01 * (layers[11]?.mass ?? Number.NaN));
  });
});

describe("a surface made bare at the end of winter, with larvae from the lake", () => {
  // Leuven and others 2014, River Nederrijn: after mass death in winter, slight recovery at 6 months, former density
  // at 18 months; 12 to 24 are accepted. Density is read as live mass: less than a third is taken as little, nine
  // tenths as recovered, in water of 22 to 24 degrees in summer.
  const emptied = 73;
  const recovery = (peak: number) => {
    const lake = withSummer(peak);
    const left = grown({ lake, years: 9 });
    const cleared = grown({ lake, years: 9, cleanAfter: (month) => month === emptied });
    return (monthsLater: number) =>
      (cleared[emptied + monthsLater]?.mass ?? Number.NaN) /
      (left[emptied + monthsLater]?.mass ?? Number.NaN);
  };

  test.each([22, 24])("has regained little after 6 months at %d degrees in summer", (peak) => {
    expect(recovery(peak)(6)).toBeLessThan(0.33);
  });

  test.each([22, 24])("is back near its former load within 12 to 24 months at %d degrees", (peak) => {
    const share = recovery(peak);
    expect(share(11)).toBeLessThan(0.8);
    expect(Math.max(...[12, 14, 16, 18, 20, 22, 24].map(share))).toBeGreaterThan(0.9);
  });
});
