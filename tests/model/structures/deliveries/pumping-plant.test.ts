import { describe, expect, it } from "vitest";
import { totalOf } from "../../../../src/model/money/line.js";
import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import type { Component, Priced } from "../../../../src/model/structures/component.js";
import { meanFlows } from "../../../../src/model/structures/deliveries/distribution.js";
import { monthlyShare } from "../../../../src/model/structures/deliveries/monthly-line.js";
import {
  type PumpingPlant,
  plantPipes,
  pumpedWithdrawal,
  pumpingPlantComponents,
} from "../../../../src/model/structures/deliveries/pumping-plant.js";
import { pluggedNozzles } from "../../../../src/model/structures/deliveries/sprinklers.js";
import { structureResult } from "../../../../src/model/structures/structure.js";
import { assumed, assumedWith } from "../../assumptions.js";
import { contextOf, contextsOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { curvePump, plant } from "../../study.js";
import { brokenLimit } from "../limits-met.js";
import { lossesOf } from "../losses.js";
import { pumpingPlant } from "./served.js";

const context = contextOf(productiveLake, 15);
const july = 6;
const layerOf = (thickness: number, lengthMm = thickness * 1000, cover = 2): Layer => ({
  ...bareSurface,
  cover,
  lengthMm,
  thickness,
  mass: thickness * 500,
});
const partOf = (plant: PumpingPlant, name: string): Component => {
  const part = pumpingPlantComponents(plant, context).find((each) => each.name === name);
  if (!part) throw new Error(`no ${name}`);
  return part;
};
const lineOf = (lines: readonly Priced[], words: string) => lines.find(({ what }) => what.includes(words));
const lastYear = (plant: PumpingPlant, lake = productiveLake) =>
  totalOf(structureResult(plant, contextsOf(lake, 15)).years.at(-1) ?? []).toNumber();

describe("a pumping plant", () => {
  it("lifts the mean flow of each month", () => {
    // By hand: 200,000 m³ in 31 days of 86,400 s.
    expect(meanFlows(pumpingPlant.delivered)[july]).toBeCloseTo(200_000 / (31 * 86_400), 12);
    expect(pumpedWithdrawal(pumpingPlant, assumed).demand[0]).toBe(0);
  });

  it("has pumps as given, and typical ones where nothing is", () => {
    const typical = pumpedWithdrawal(pumpingPlant, assumed).supply;
    expect(typical).toMatchObject({
      efficiency: assumed("irrigation.pump-efficiency"),
      marginHead: assumed("irrigation.pump-margin"),
    });
    const given = { ...pumpingPlant, pump: { energyPrice: 0.08, efficiency: 0.8, marginHead: 9 } };
    expect(pumpedWithdrawal(given, assumed).supply).toMatchObject({ efficiency: 0.8, marginHead: 9 });
    const energy = (plant: PumpingPlant) =>
      lineOf(lossesOf(partOf(plant, "discharge main"), layerOf(0.005), july), "energy");
    const assumedIds = ["irrigation.pump-efficiency", "irrigation.pump-margin"];
    expect(energy(pumpingPlant)?.assumptionIds).toEqual([
      ...(energy(given)?.assumptionIds ?? []),
      ...assumedIds,
    ]);
    for (const id of assumedIds) expect(energy(given)?.assumptionIds).not.toContain(id);
    const withoutMargin = { ...pumpingPlant, pump: { ...given.pump, marginHead: 0 } };
    expect(energy(withoutMargin)?.assumptionIds).toEqual(energy(given)?.assumptionIds);
    const ofCurve = {
      ...pumpingPlant,
      pump: { ...given.pump, marginHead: undefined, curve: curvePump.curve, deliveryElevation: 125 },
    };
    expect(energy(ofCurve)?.assumptionIds).not.toContain("irrigation.pump-margin");
    // By hand: the power is the inverse of the efficiency, at a layer that both margins bear.
    expect((energy(pumpingPlant)?.quantity ?? 0) * typical.efficiency).toBeCloseTo(
      (energy(given)?.quantity ?? 0) * 0.8,
      6,
    );
  });

  it("pays for water that a lateral does not bring by the value of deliveries", () => {
    const part = partOf(pumpingPlant, "laterals");
    expect(lineOf(lossesOf(part, bareSurface, july), "not brought")).toBeUndefined();
    const lost = lineOf(lossesOf(part, layerOf(0.03), july), "not brought");
    expect(lost).toMatchObject({ type: "loss", quantityKind: "volume", unitRate: 0.05 });
    // A bore of 100 mm less twice 30 mm leaves 16 % of its section: most of July's 200,000 m³ is lost, never more.
    expect(lost?.quantity).toBeGreaterThan(100_000);
    expect(lost?.quantity).toBeLessThan(200_000);
    expect(brokenLimit(part, layerOf(0.03), july)).toMatch(/shortage/);
    // A month without water loses none.
    expect(lineOf(lossesOf(part, layerOf(0.03), 0), "not brought")).toBeUndefined();
  });

  it("has a rack, a main, a canal and laterals as they are given", () => {
    const names = (given: Partial<PumpingPlant>) =>
      pumpingPlantComponents({ ...pumpingPlant, ...given }, context).map(({ name }) => name);
    const canal = { length: 2000, bottomWidth: 0.4, depth: 0.3 };
    expect(names({ laterals: undefined })).toEqual(["discharge main"]);
    expect(names({ rack: plant.rack, canal })).toEqual(["trash rack", "discharge main", "canal", "laterals"]);
    const pipes = plantPipes(pumpingPlant);
    expect(pipes.map(({ name, at }) => [name, ...at])).toEqual([
      ["discharge main", "main"],
      ["laterals", "laterals"],
    ]);
  });

  it("has all of its laterals for the largest flow, and as much wall as they have together", () => {
    const part = partOf(pumpingPlant, "laterals");
    expect(part.designFlow).toBeCloseTo(200_000 / (31 * 86_400), 12);
    // By hand: 20 of 300 m and a bore of 100 mm.
    expect(part.wettedArea).toBeCloseTo(20 * 300 * Math.PI * 0.1, 9);
    expect(brokenLimit(part, bareSurface, july)).toBeUndefined();
  });

  it("lacks no water in a month that needs none", () => {
    const line = { pipe: pumpingPlant.main, requiredFlow: [0, 0.1], availableHead: 3 };
    expect(monthlyShare(line, context)(layerOf(0.15), 0)).toBe(1);
    expect(monthlyShare(line, context)(layerOf(0.15), 1)).toBeLessThan(1);
  });

  it("pays for what its canal falls short of", () => {
    const canal = { length: 2000, bottomWidth: 0.4, depth: 0.3, sideSlope: 1.5, capacity: 0.08 };
    const part = partOf({ ...pumpingPlant, canal }, "canal");
    // By hand: perimeter 0.4 + 0.6 × √3.25 = 1.481665, over 2,000 m.
    expect(part.wettedArea).toBeCloseTo(2963.33, 2);
    const thick = lineOf(lossesOf(part, layerOf(0.02), july), "not brought");
    // By hand: (0.255 − 1.481665 × 0.02)/0.255 = 0.883791; ^(5/3) × (1/30)^(1/6) = 0.813922 × 0.567300 = 0.461738 of
    // 0.08 m³/s is 0.036939; 0.074671 − 0.036939 over 31 days.
    expect(thick?.quantity).toBeCloseTo((200_000 / (31 * 86_400) - 0.036939) * 31 * 86_400, -1);
    expect(lineOf(lossesOf(part, bareSurface, july), "not brought")).toBeUndefined();
  });

  it("counts plugged sprinklers by area where they are not counted", () => {
    const hours = (plant: PumpingPlant, month = july) =>
      lineOf(lossesOf(partOf(plant, "laterals"), layerOf(0.01), month), "sprinklers")?.quantity;
    // By hand: 1,200,000 m² over 300 m² are 4,000; 2 % of them, 6 minutes each, under closed shells above the bore.
    expect(assumed("irrigation.area-per-sprinkler")).toBe(300);
    expect(hours(pumpingPlant)).toBeCloseTo(4000 * 0.02 * 0.1, 9);
    expect(hours({ ...pumpingPlant, sprinklerCount: 500 })).toBeCloseTo(500 * 0.02 * 0.1, 9);
    expect(hours({ ...pumpingPlant, area: 2 * pumpingPlant.area })).toBeCloseTo(2 * 4000 * 0.02 * 0.1, 9);
    expect(hours(pumpingPlant, 0)).toBeUndefined();
    expect(hours({ ...pumpingPlant, method: "surface" })).toBeUndefined();
  });

  it("names what is typical of its sprinklers only where it is not given", () => {
    const typical = (given: Partial<PumpingPlant>) =>
      lineOf(
        lossesOf(partOf({ ...pumpingPlant, ...given }, "laterals"), layerOf(0.01), july),
        "sprinklers",
      )?.assumptionIds.filter((id) => !/plugged-share|closed-cover|nozzle-time|maintenance-rate/.test(id));
    expect(typical({})).toHaveLength(2);
    expect(typical({ nozzleBore: 0.004 })).toEqual(["irrigation.area-per-sprinkler"]);
    expect(typical({ sprinklerCount: 500 })).toEqual(["irrigation.nozzle-bore"]);
    expect(typical({ sprinklerCount: 500, nozzleBore: 0.004 })).toEqual([]);
  });

  it("has its sprinklers behind the main where there are no laterals", () => {
    const part = partOf({ ...pumpingPlant, laterals: undefined }, "discharge main");
    expect(lineOf(lossesOf(part, layerOf(0.01), july), "sprinklers")?.quantity).toBeGreaterThan(0);
    const before = partOf(pumpingPlant, "discharge main");
    expect(lineOf(lossesOf(before, layerOf(0.01), july), "sprinklers")).toBeUndefined();
  });

  it("plugs fewer nozzles under an open layer, and under shells shorter than the bore", () => {
    const nozzle = { share: 0.02, closedCover: 1.2, bore: 0.005 };
    // By hand: a half of the cover, and 2 of 5 mm.
    expect(pluggedNozzles(layerOf(0.01, 10, 0.6), nozzle)).toBeCloseTo(0.01, 12);
    expect(pluggedNozzles(layerOf(0.01, 2, 2), nozzle)).toBeCloseTo(0.008, 12);
    expect(pluggedNozzles(bareSurface, nozzle)).toBe(0);
  });

  it("fouls less where it is emptied in the months without water", () => {
    const thickest = (drainedWhenIdle: boolean) =>
      structureResult({ ...pumpingPlant, drainedWhenIdle }, contextsOf(productiveLake, 15)).components.map(
        ({ untouchedLayer }) => untouchedLayer.thickness,
      );
    const [emptied, kept] = [thickest(true), thickest(false)];
    for (const [index, thickness] of emptied.entries()) {
      expect(thickness).toBeLessThan((kept[index] ?? 0) / 2);
    }
    // Emptied from October to April, 212 days: it can be cleaned in the dry.
    const [main] = pumpingPlantComponents(pumpingPlant, context);
    if (!main) throw new Error("no main");
    expect(context.longestDryRun(main.surface.place)).toEqual({ startDay: 273, days: 212 });
  });

  it("costs about twice as much for twice the land, water and pipes", () => {
    const double: PumpingPlant = {
      ...pumpingPlant,
      area: 2 * pumpingPlant.area,
      delivered: pumpingPlant.delivered.map((volume) => 2 * volume),
      // Twice the section at the same velocity.
      main: { ...pumpingPlant.main, diameter: pumpingPlant.main.diameter * Math.SQRT2 },
      laterals: pumpingPlant.laterals && { ...pumpingPlant.laterals, count: 40 },
    };
    const ratio = lastYear(double) / lastYear(pumpingPlant);
    expect(ratio).toBeGreaterThan(1.7);
    expect(ratio).toBeLessThan(2.1);
  });

  it("costs nothing without mussels", () => {
    // No calcium, no mussels: the suitability of the class is set to none.
    const none = assumedWith({ "suitability.weight.none": 0, "suitability.weight.very-low": 0 });
    const bare = { ...productiveLake, chemistry: { calcium: 1, ph: 5 } };
    const result = structureResult(pumpingPlant, contextsOf(bare, 15, none));
    expect(result.years.flat()).toEqual([]);
  });
});
