import { describe, expect, it } from "vitest";
import type { Lake } from "../../../src/model/lake/lake.js";
import { suitability } from "../../../src/model/lake/suitability.js";
import { growthParameters, yearlyMortality } from "../../../src/model/mussels/growth.js";
import type { Layer } from "../../../src/model/mussels/layer.js";
import { assumed, idsOfPlanBy } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { growLayers, growth, stillSurface } from "./growing.js";

describe("a layer answers to what thins settlers", () => {
  const thickestOf = (layers: readonly Layer[]) => Math.max(...layers.map(({ thickness }) => thickness));
  const untouched = (share: number) => {
    const surface = stillSurface({ at: "floating", depth: 1 }, productiveLake);
    return thickestOf(growLayers({ surface, density: Array<number>(120).fill(share) }, growth));
  };

  it("is at most half as thick where settlers are twenty times fewer", () => {
    // Common practice, no source: crowding does not make up for settlers that never came.
    expect(untouched(1 / 20)).toBeLessThan(untouched(1) / 2);
  });

  it("is under 3 mm behind a strainer and ultraviolet light", () => {
    // Power magazine 2019: the mussels in the cooling systems of Parker Dam were virtually eliminated.
    expect(untouched(assumed(idsOfPlanBy("filter").settlementFactor))).toBeLessThan(0.003);
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
