import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { monthDays } from "../../../src/model/lake/calendar.js";
import { bareSurface, type Layer } from "../../../src/model/mussels/layer.js";
import { hydropowerComponents, operatingYear } from "../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../src/model/structures/inputs.js";
import { assumed, assumedWith } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { productiveLake } from "../lakes.js";
import { everyMonth, relativeGap } from "../near.js";
import { plant, studyOf } from "../study.js";
import { lossesOf } from "./losses.js";

const context = contextOf(productiveLake, 5, assumed);
const { efficiency: _, flow: __, ...withoutEfficiency } = plant;
const allHours = monthDays.map((days) => days * 24);
const turbinePlant: Hydropower = {
  ...withoutEfficiency,
  running: { hours: allHours, flow: [6, 8, 10, 12, 14, 15, 15, 14, 12, 10, 8, 3] },
  turbine: { type: "francis", ratedFlow: 15, generatorEfficiency: 0.96 },
};
const everyHour = (flow: readonly number[]) => ({ hours: allHours, flow });
const turbineTypes = ["francis", "kaplan", "propeller", "crossflow", "pelton"] as const;
const thick: Layer = { ...bareSurface, cover: 2, lengthMm: 15, thickness: 0.015, mass: 5 };

describe("a plant with a turbine", () => {
  it("makes energy at the efficiency of each month's flow", () => {
    // By hand: 12 of 15 m3/s is 80 % of the rated flow; peak times relative times generator.
    const year = operatingYear(turbinePlant, context);
    const at80 = assumed("turbine.francis.peak-efficiency") * assumed("turbine.francis.relative-80") * 0.96;
    expect(year.efficiency[3]).toBeCloseTo(at80, 12);
    const expected = at80 * 9.81 * 12 * (year.netHead[3] ?? Number.NaN) * 30 * 24;
    expect(relativeGap(year.energy[3] ?? Number.NaN, expected)).toBeLessThan(1e-12);
  });

  it("makes nothing below the technical minimum, and loses nothing there", () => {
    // 3 of 15 m3/s is a fifth, below the half at which a Francis turbine stops (from memory).
    expect(operatingYear(turbinePlant, context).energy[11]).toBe(0);
    for (const part of hydropowerComponents(turbinePlant, context)) {
      expect(lossesOf(part, thick, 11).map(({ quantity }) => quantity)).toEqual([0]);
    }
  });

  it("names the turbine's assumptions in its losses, and the plant of one efficiency does not", () => {
    const idsOf = (each: Hydropower) =>
      hydropowerComponents(each, context)
        .flatMap((part) => lossesOf(part, thick, 5))
        .flatMap(({ assumptionIds }) => assumptionIds);
    expect(idsOf(turbinePlant)).toContain("turbine.francis.peak-efficiency");
    expect(idsOf(plant).filter((id) => id.startsWith("turbine."))).toEqual([]);
  });

  it("is the plant of one efficiency where its curve is flat", () => {
    // Two routes to the same energy.
    const flat = assumedWith({
      "turbine.francis.peak-efficiency": 0.9,
      "turbine.francis.minimum-flow": 0,
      ...Object.fromEntries([20, 40, 60, 80, 100].map((each) => [`turbine.francis.relative-${each}`, 1])),
    });
    const byTurbine = operatingYear(
      { ...turbinePlant, running: everyHour(plant.flow ?? []) },
      { ...context, assumed: flat },
    );
    const byConstant = operatingYear({ ...plant, efficiency: 0.9 * 0.96 }, context);
    byConstant.energy.forEach((energy, month) => {
      expect(relativeGap(byTurbine.energy[month] ?? Number.NaN, energy)).toBeLessThan(1e-12);
    });
  });

  it("loses no more energy than it makes, for any type", () => {
    const types = fc.constantFrom(...turbineTypes);
    const shares = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(types, shares(0.05, 1), shares(60, 92), shares(0.5, 3), (type, share, tailwater, bore) => {
        const each: Hydropower = {
          ...turbinePlant,
          tailwaterElevation: tailwater,
          running: everyHour(everyMonth(share * 15)),
          turbine: { type, ratedFlow: 15, generatorEfficiency: 0.96 },
          penstock: { ...plant.penstock, diameter: bore },
          coolingWater: {
            ...plant.coolingWater,
            exchanger: { area: 20, cleanCoefficient: 1200, hotCapacityRate: 40 },
          },
        };
        const [result] = compare(studyOf([each]), assumed).structures;
        const made = result?.cleanEnergy.reduce((sum, month) => sum + month, 0) ?? Number.NaN;
        for (const lines of result?.years ?? []) {
          const energies = lines.filter(({ quantityKind }) => quantityKind === "energy");
          const lost = energies.reduce((sum, line) => sum + line.quantity, 0);
          expect(lost).toBeGreaterThanOrEqual(0);
          expect(lost).toBeLessThanOrEqual(made * (1 + 1e-12));
        }
      }),
      { seed: 521, numRuns: 25 },
    );
  });
});

describe("a unit cooled through an exchanger", () => {
  it("is derated by the heat that is missing", () => {
    // The line's share of heat, tested by itself, times the month's energy and the units.
    const cooled: Hydropower = {
      ...plant,
      coolingWater: {
        ...plant.coolingWater,
        exchanger: { area: 20, cleanCoefficient: 1200, hotCapacityRate: 40 },
      },
    };
    const lossOf = (each: Hydropower) =>
      lossesOf(
        hydropowerComponents(each, context).find(({ name }) => name === "cooling-water line"),
        thick,
        0,
      )[0];
    const [byHeat, byWater] = [lossOf(cooled), lossOf(plant)];
    expect(byHeat?.assumptionIds).toContain("exchanger.fouling-resistance");
    expect(byWater?.assumptionIds).not.toContain("exchanger.fouling-resistance");
    expect(byHeat?.quantity).not.toBe(byWater?.quantity);
    const made = (operatingYear(plant, context).energy[0] ?? Number.NaN) * plant.units;
    expect(byHeat?.quantity).toBeGreaterThan(0);
    expect(byHeat?.quantity).toBeLessThan(made);
  });
});
