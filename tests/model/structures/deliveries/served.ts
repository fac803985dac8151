import type { Hatchery } from "../../../../src/model/structures/deliveries/hatchery.js";
import type { PumpingPlant } from "../../../../src/model/structures/deliveries/pumping-plant.js";
import type { TreatmentPlant } from "../../../../src/model/structures/kinds/treatment-plant.js";
import { everyMonth } from "../../near.js";

const base = { bearer: "authority", fixtures: [], pinned: [] };

/** An invented plant that lifts 610,000 m³ from May to September onto 120 ha. */
export const pumpingPlant: PumpingPlant = {
  ...base,
  kind: "pumping-plant",
  id: "orchard",
  name: "Orchard pumps",
  elevation: 88,
  delivered: [0, 0, 0, 0, 60_000, 140_000, 200_000, 160_000, 50_000, 0, 0, 0],
  area: 1_200_000,
  method: "sprinklers",
  pump: { energyPrice: 0.08 },
  main: { length: 900, diameter: 0.4, roughness: 0.0001, minorLoss: 3 },
  laterals: { count: 20, length: 300, diameter: 0.1, roughness: 0.0001, minorLoss: 2, availableHead: 3 },
  lostDeliveries: 0.05,
  drainedWhenIdle: true,
  oxidantAllowed: false,
};

/** An invented hatchery of 40 L/s at most. */
export const hatchery: Hatchery = {
  ...base,
  kind: "hatchery",
  id: "hatchery",
  name: "Trout hatchery",
  elevation: 88,
  requiredFlow: [0.03, 0.03, 0.03, 0.03, 0.04, 0.04, 0.04, 0.04, 0.04, 0.03, 0.03, 0.03],
  line: { length: 300, diameter: 0.25, roughness: 0.0001, minorLoss: 3, availableHead: 4 },
  aerationHead: 1.5,
  filters: 3,
  shortfall: { by: "fish", lossPerDay: 900 },
  duties: [{ name: "Checks of stocking trucks", cost: 2400, fromYear: 2 }],
};

/** Invented water works of 0.1 m³/s the year round. */
export const waterworks: TreatmentPlant = {
  ...base,
  kind: "treatment-plant",
  id: "works",
  name: "Water works",
  treated: everyMonth(0.1),
  tasteAndOdour: { dose: [0, 0, 0, 0, 0, 0, 5, 5, 5, 0, 0, 0], carbonPrice: 3 },
};
