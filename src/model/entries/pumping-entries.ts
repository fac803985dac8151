import { sumOf } from "../../lists.js";
import type { PumpingPlant } from "../structures/deliveries/pumping-plant.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** Depth of water on the land, and what water and energy cost there. */
export function pumpingEntries(checked: Checked<PumpingPlant>): EntryCheck[] {
  const { structure: plant, assumed } = checked;
  const depth = entryOf(checked, ["area"], {
    what: "water of a year over the land",
    measure: "length",
    found: sumOf(plant.delivered) / plant.area,
    remedy: "Look again at the area and the water delivered, and at their units.",
  });
  const energy = entryOf(checked, ["pump", "energyPrice"], {
    what: "price of energy",
    measure: "moneyPerEnergy",
    found: plant.pump.energyPrice,
    remedy: "Look again at the price and at the unit under its stroke.",
  });
  const water = entryOf(checked, ["lostDeliveries"], {
    what: "value of water not delivered",
    measure: "moneyPerVolume",
    found: plant.lostDeliveries,
    remedy: "Look again at the value and at the unit under its stroke.",
  });
  return [
    usual(depth, usualRanges.irrigationDepth, assumed),
    usual(energy, usualRanges.energyPrice, assumed),
    ...(plant.lostDeliveries > 0 ? [usual(water, usualRanges.waterPrice, assumed)] : []),
  ];
}
