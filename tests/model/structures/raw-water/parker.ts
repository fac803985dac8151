import type { Lake } from "../../../../src/model/lake/lake.js";
import type { Hydropower } from "../../../../src/model/structures/inputs.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth } from "../../near.js";
import { plant } from "../../study.js";

/**
 * A plant after Parker Dam on the Colorado, written down before the model of raw-water systems was run for the first time
 * and not changed since. Published: extra maintenance of the generator coolers of about 80,000 USD a year, of all
 * organisms (Pucherelli and others 2018, abstract); strainers of 3/8 in, later of 1/8 in (Bureau of Reclamation's page on
 * Parker Dam). Cooling water: 0.60 L/s for each MW of a unit (computed from 2 % of losses and 8 K). From memory: four
 * units of 30 MW, a head of 22 m, penstocks of 6.7 m. Assumed, no source: line, tubes, bores, passes and screens.
 */
export const published = { dollars: 80_000, year: 2018 } as const;

const { flow: _, ...base } = plant;

export const parker: Hydropower = {
  ...base,
  name: "Plant after Parker Dam",
  units: 4,
  elevation: 128,
  tailwaterElevation: 114,
  efficiency: 0.88,
  running: { hours: everyMonth(400), flow: everyMonth(158) },
  energyPrice: everyMonth(0.04),
  rack: { ...plant.rack, width: 16, height: 16, headLossLimit: 0.5, velocityLimit: 1.5 },
  penstock: { length: 60, diameter: 6.7, roughness: 0.0003, minorLoss: 0.5 },
  coolingWater: {
    length: 60,
    diameter: 0.15,
    roughness: 0.00015,
    minorLoss: 6,
    requiredFlow: 0.018,
    availableHead: 8,
    serves: "generator and bearing coolers",
    strainer: { mesh: 0.0095, screenArea: 0.3, type: "duplex" },
    coolers: [
      { name: "generator air coolers", count: 8, tubes: 120, bore: 0.015, passes: 4 },
      { name: "bearing oil coolers", count: 2, tubes: 60, bore: 0.013, passes: 4 },
    ],
  },
};

/** With the finer strainers that came later. */
export const finerMesh: Hydropower = {
  ...parker,
  coolingWater: {
    ...parker.coolingWater,
    strainer: { mesh: 0.0032, screenArea: 0.3, type: "duplex" },
  },
};

/** A warm reservoir after Lake Havasu: levels, temperatures and chemistry from memory, rounded. */
export const havasu: Lake = {
  ...productiveLake,
  name: "Reservoir after Lake Havasu",
  maximumElevation: 137,
  minimumElevation: 134,
  storageTable: [
    { elevation: 115, area: 1e7, storage: 0 },
    { elevation: 137, area: 8e7, storage: 8e8 },
  ],
  drawdown: [{ dayOfYear: 0, elevation: 136.5 }],
  surfaceTemperature: [12, 12, 14, 17, 21, 25, 28, 29, 27, 23, 18, 14],
  deepTemperature: [12, 12, 13, 15, 18, 21, 24, 26, 25, 22, 18, 14],
  thermoclineDepth: 15,
  airTemperature: [12, 14, 18, 22, 28, 33, 36, 35, 31, 24, 17, 12],
  humidity: everyMonth(0.3),
  chemistry: { calcium: 75, ph: 8.2 },
};
