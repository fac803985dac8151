import { describe, expect, it } from "vitest";
import {
  algaeFurthered,
  algaeSeason,
  amountByYear,
  carbonLines,
  type TasteAndOdour,
} from "../../../../src/model/structures/deliveries/taste-and-odour.js";
import {
  type TreatmentPlant,
  treatmentPlant,
} from "../../../../src/model/structures/kinds/treatment-plant.js";
import { structureResult } from "../../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../../assumptions.js";
import { contextsOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth } from "../../near.js";
import { waterworks } from "./served.js";

const contexts = contextsOf(productiveLake, 15);
const [{ density }] = contexts;
const linesOf = (plant: TreatmentPlant) => structureResult(plant, contexts).years;
const quantityOf = (plant: TreatmentPlant, year = 14) => linesOf(plant)[year]?.[0]?.quantity ?? 0;

describe("extra treatment of drinking water", () => {
  it("is dose, water, months and density", () => {
    // By hand, in full density: 5 g on each of 0.1 m³/s × 92 days of 86,400 s, July to September, is 3,974.4 kg.
    const doses = [0, 0, 0, 0, 0, 0, 5e-3, 5e-3, 5e-3, 0, 0, 0];
    const [first, second] = amountByYear(everyMonth(0.1), doses, [...everyMonth(0.5), ...everyMonth(1)]);
    expect(first).toBeCloseTo(1987.2, 6);
    expect(second).toBeCloseTo(3974.4, 6);
    const line = linesOf(waterworks)[14]?.[0];
    const share = [6, 7, 8].reduce(
      (sum, month) => sum + (density[14 * 12 + month] ?? 0) * (month === 8 ? 30 : 31),
      0,
    );
    expect(line?.quantity).toBeCloseTo((3974.4 * share) / 92, 6);
    expect(line).toMatchObject({ type: "loss", quantityKind: "mass", unitRate: 3, bearer: "authority" });
  });

  it("is twice as much for twice the water, and grows with the mussels", () => {
    const twice = { ...waterworks, treated: everyMonth(0.2) };
    expect(quantityOf(twice)).toBeCloseTo(2 * quantityOf(waterworks), 6);
    expect(quantityOf(waterworks, 0)).toBeLessThan(quantityOf(waterworks, 14) / 2);
  });

  it("is typical where dose and price are not given, in the season of algae", () => {
    const plant = { ...waterworks, tasteAndOdour: {} };
    // By hand: between 15 and 20 °C the share rises; May at 16 °C a fifth, June to September whole, October a fifth.
    const season = { from: 15, full: 20 };
    expect([14, 15, 16, 20, 24].map((each) => algaeSeason(each, season))).toEqual([0, 0, 0.2, 1, 1]);
    const days = (31 + 31) / 5 + 30 + 31 + 31 + 30;
    const mature = density.at(-1) ?? 0;
    expect(quantityOf(plant) / mature / (0.005 * 0.1 * 86_400 * days)).toBeCloseTo(1, 2);
    expect(linesOf(plant)[14]?.[0]).toMatchObject({ unitRate: assumed("taste-odour.carbon-price") });
    expect(linesOf(plant)[14]?.[0]?.assumptionIds).toEqual(
      expect.arrayContaining([
        "taste-odour.dose",
        "taste-odour.carbon-price",
        "taste-odour.full-temperature",
      ]),
    );
  });

  it("names no assumption where dose and price are given, and what is assumed of algae where they are not", () => {
    const [context] = contexts;
    const idsOf = (taste: TasteAndOdour) => carbonLines(taste, waterworks.treated, context)[0]?.assumptionIds;
    const given = { dose: everyMonth(5), carbonPrice: 3 };
    expect(idsOf(given)).toEqual([]);
    expect(idsOf({ ...given, carbonPrice: undefined })).toEqual(["taste-odour.carbon-price"]);
    expect(idsOf({ ...given, totalPhosphorus: 0.02 })).toEqual([
      "taste-odour.phosphorus-full",
      "taste-odour.phosphorus-none",
    ]);
  });

  it("falls with phosphorus, to nothing where mussels hold algae down", () => {
    // By hand: 17.5 µg/L is midway between 10 and 25.
    const phosphorus = { full: 0.01, none: 0.025 };
    expect(algaeFurthered(0.0175, phosphorus)).toBeCloseTo(0.5, 12);
    const at = (totalPhosphorus: number) =>
      quantityOf({ ...waterworks, tasteAndOdour: { ...waterworks.tasteAndOdour, totalPhosphorus } });
    expect(at(0.005)).toBeCloseTo(quantityOf(waterworks), 9);
    expect(at(0.0175)).toBeCloseTo(quantityOf(waterworks) / 2, 6);
    expect(at(0.04)).toBe(0);
  });

  it("adds what by-products cost by the water of each month", () => {
    const plant = { ...waterworks, tasteAndOdour: undefined, byProducts: { cost: everyMonth(0.01) } };
    const line = linesOf(plant)[14]?.[0];
    // By hand: 0.1 m³/s of a year at 0.01 a m³.
    const whole = 0.1 * 365 * 86_400 * 0.01;
    const mean = density.slice(14 * 12).reduce((sum, each) => sum + each, 0) / 12;
    expect(((line?.quantity ?? 0) * (line?.unitRate ?? 0)) / (whole * mean)).toBeCloseTo(1, 2);
    expect(line).toMatchObject({ quantityKind: "volume", unitRate: expect.closeTo(0.01, 12) });
    expect(line?.assumptionIds).toEqual([]);
    const idle = { ...plant, treated: everyMonth(0) };
    expect([...linesOf(idle), ...linesOf({ ...plant, byProducts: { cost: everyMonth(0) } })].flat()).toEqual(
      [],
    );
  });

  it("has one list for years of the same amounts", () => {
    const plant = { ...waterworks, byProducts: { cost: everyMonth(0.01) } };
    const years = treatmentPlant.ownYears?.(plant, [], contexts[0]) ?? [];
    expect(years).toHaveLength(15);
    // The density rises in the first years, and stays from its settled month on.
    expect(contexts[0].settledMonth).toBeLessThan(13 * 12);
    expect(years[14]).toBe(years[13]);
    expect(new Set(years.slice(0, 4)).size).toBe(4);
  });

  it("is nothing without mussels, and nothing where neither is stated", () => {
    const bare = { ...productiveLake, chemistry: { calcium: 1, ph: 5 } };
    const none = contextsOf(
      bare,
      15,
      assumedWith({ "suitability.weight.none": 0, "suitability.weight.very-low": 0 }),
    );
    expect(structureResult(waterworks, none).years.flat()).toEqual([]);
    expect(linesOf({ ...waterworks, tasteAndOdour: undefined }).flat()).toEqual([]);
  });
});
