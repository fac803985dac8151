import { describe, expect, it } from "vitest";
import { suitability } from "../../../src/model/lake/suitability.js";
import { bareSurface } from "../../../src/model/mussels/layer.js";
import { serviceShare } from "../../../src/model/structures/small-line.js";
import { structureResult } from "../../../src/model/structures/structure.js";
import { fouledConveyance, supplyOf } from "../../../src/model/structures/supply.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { everyMonth } from "../near.js";
import { gravityIntake, plant } from "../study.js";

const context = contextOf(productiveLake, 12, assumed);
const film = { ...bareSurface, number: 1, lengthMm: 1, cover: 1e-6, mass: 1e-6, thickness: 1e-9 };

// Common practice, no source: an estimate of a pest's cost counts what the pest adds, not what was wrong before.
describe("a shortage that clean parts have by themselves", () => {
  it("is not charged to the mussels at a gravity conduit", () => {
    const short = { ...gravityIntake, supply: { by: "gravity" as const, availableHead: 1 } };
    const supply = supplyOf(short, context);
    const july = 6; // the largest demand, 1.2 m3/s
    const cleanDelivered = supply.cleanYear[july]?.delivered ?? Number.NaN;
    const { delivered } = fouledConveyance(supply, film, july, context);
    expect(cleanDelivered).toBeLessThan(1.2);
    expect((cleanDelivered - delivered) / cleanDelivered).toBeLessThan(1e-6);
  });

  it("is not charged to the mussels at a cooling-water line", () => {
    const short = { ...plant, coolingWater: { ...plant.coolingWater, availableHead: 0.2 } };
    const share = serviceShare(short.coolingWater, context);
    expect(share(bareSurface)).toBe(1);
    expect(share(film)).toBeGreaterThan(0.999);
  });
});

describe("conservation", () => {
  it("a plant loses no more energy in a year than it makes, however badly each of its parts fouls", () => {
    const lake = contextOf(drawnDownLake, 12, assumed);
    const starved = {
      ...plant,
      tailwaterElevation: 86.78,
      flow: everyMonth(0.7835),
      penstock: { length: 2262, diameter: 0.7716, roughness: 0.0002, minorLoss: 0.6 },
      coolingWater: {
        length: 142.4,
        diameter: 0.148,
        roughness: 0.0002,
        minorLoss: 5,
        requiredFlow: 0.00497,
        availableHead: 2.42,
      },
    };
    const { years, cleanEnergy } = structureResult(starved, [lake]);
    const made = cleanEnergy.reduce((sum, month) => sum + month, 0);
    for (const lines of years) {
      const lost = lines
        .filter((line) => line.quantityKind === "energy")
        .reduce((sum, line) => sum + line.quantity, 0);
      expect(lost).toBeLessThanOrEqual(made * (1 + 1e-12));
    }
  });

  it("an intake that takes no water has no hydraulics to show and no figure that is not one", () => {
    const { hydraulics, years } = structureResult({ ...gravityIntake, demand: everyMonth(0) }, [context]);
    expect(hydraulics).toEqual({ pipes: [], racks: [], pumps: [] });
    for (const line of years.flat()) expect(Number.isFinite(line.quantity * line.unitRate)).toBe(true);
  });

  it("leaving a surface alone never keeps a limit that cleaning it every five years breaks", () => {
    const { components } = structureResult(plant, [context]);
    for (const { everyPlan } of components) {
      const keeps = (id: string) => everyPlan().find(({ plan }) => plan.id === id)?.brokenLimit === undefined;
      if (keeps("leave")) expect(keeps("divers-60")).toBe(true);
    }
  });
});

describe("water that excludes mussels", () => {
  // Salinity above 10 g/L: none (Mackie and Claudi 2010, from memory); sea water has about 35 g/L.
  it("excludes quagga as well where it is salt, but not where calcium is low (Davis and others 2015)", () => {
    const salt = { ...productiveLake, chemistry: { calcium: 400, salinity: 35 } };
    expect(suitability(salt, assumed)).toMatchObject({
      weight: 0,
      limiting: { variable: "salinity", class: "none" },
    });
    const soft = { ...productiveLake, chemistry: { calcium: 5 } };
    expect(suitability(soft, assumed)).toMatchObject({
      limiting: { variable: "calcium", class: "very low" },
    });
    expect(suitability(soft, assumed).weight).toBeGreaterThan(0);
  });
});
