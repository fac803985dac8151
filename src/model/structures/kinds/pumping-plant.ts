import { sumOf } from "../../../lists.js";
import { pumpingEntries } from "../../entries/pumping-entries.js";
import { meanFlows } from "../deliveries/distribution.js";
import {
  largestFlow,
  type PumpingPlant,
  plantPipes,
  pumpedWithdrawal,
  pumpingPlantComponents,
} from "../deliveries/pumping-plant.js";
import { pumpSummary } from "../pump-summary.js";
import { atOneElevation, type StructureKind, sized } from "../structure-kind.js";
import { intakeService } from "./intake.js";

export const pumpingPlant: StructureKind<PumpingPlant> = {
  kind: "pumping-plant",
  title: "Irrigation pumping plant",
  name: "pumping plant",
  commonFields: ["main/roughness", "pump/efficiency", "pump/marginHead", "sprinklerCount"],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: atOneElevation,
  size: (plant) => [sized(plant.area, "landArea"), " irrigated, up to ", sized(largestFlow(plant), "flow")],
  inlet: ({ elevation, delivered }) => ({ elevation, flow: meanFlows(delivered) }),
  rack: (plant) => plant.rack && { rack: plant.rack, flow: largestFlow(plant) },
  pipes: plantPipes,
  components: pumpingPlantComponents,
  cleanService: (plant, context) => intakeService(pumpedWithdrawal(plant, context.assumed), context),
  pumps: (plant, layer, context) => pumpSummary(pumpedWithdrawal(plant, context.assumed), layer, context),
  outputs: ({ delivered, area }) => [
    { what: "water delivered", quantity: sumOf(delivered), measure: "volume" },
    { what: "land irrigated", quantity: area, measure: "landArea" },
  ],
  cautions:
    "Lock out and tag out pumps before anybody reaches into a sump, a screen or a coupling: they start by themselves. Sumps, mains and siphons are permit-required confined spaces. Mains and laterals hold pressure and water hammer after the pumps stop: bleed them first. Water treated against mussels reaches crops, tail water and streams: read the label, and keep to the pesticide discharge permit.",
  entries: pumpingEntries,
  lowered: (plant, { fall, flowShare }) => ({
    ...plant,
    elevation: plant.elevation - fall,
    delivered: plant.delivered.map((volume) => volume * flowShare),
  }),
};
