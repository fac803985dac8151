import { counted } from "../../../counted.js";
import { at } from "../../../lists.js";
import { plantEntries } from "../../entries/plant-entries.js";
import { months } from "../../lake/calendar.js";
import { wettedShares } from "../../lake/levels.js";
import type { Contexts, LakeContext } from "../context.js";
import { hydropowerComponents, operatingYear } from "../hydropower.js";
import type { Hydropower } from "../inputs.js";
import { pipeWall, upstreamWall } from "../pipe.js";
import { linePart, type PipePart } from "../pipe-part.js";
import { plantRunning } from "../plant/running.js";
import { rackWall } from "../rack.js";
import { fittingWords } from "../raw-water/fitting-words.js";
import { atOneElevation, boreWords, type ServiceItem, type StructureKind, sized } from "../structure-kind.js";

/** Energy of a clean year by month, the mean over the possible operating years. */
function plantEnergy(plant: Hydropower, contexts: Contexts): number[] {
  const years = contexts.map((context) => operatingYear(plant, context).energy);
  return months.map(
    (month) => (years.reduce((sum, energy) => sum + at(energy, month), 0) / years.length) * plant.units,
  );
}

/** Counted from nothing: the energy made while the intake is under water, as a negative amount. */
function energyNotMade(plant: Hydropower, context: LakeContext): ServiceItem {
  const { energy } = operatingYear(plant, context);
  const wetted = wettedShares(context.daily, plant.elevation);
  return {
    what: "energy not made at the lower head",
    quantityKind: "energy",
    quantity: energy.map((each, month) => -each * plant.units * at(wetted, month)),
    unitRate: plant.energyPrice,
  };
}

/** Where the flow while running comes from, for the reader. */
const runningWords = {
  entry: " while running",
  "rated flow": " (the rated flow, in the hours that the mean flow takes at it)",
  "monthly mean": " (the monthly mean, in all hours)",
} as const;

const largestFlow = (plant: Hydropower) => Math.max(...plantRunning(plant).flow);

/** Of one unit. Without water through the turbines nothing has to be cooled. */
function pipesOf(plant: Hydropower): PipePart[] {
  const { penstock, coolingWater, tailwaterElevation, units } = plant;
  const flow = largestFlow(plant);
  const cooling = linePart("cooling-water line", ["coolingWater"], { line: coolingWater, count: units });
  const drive = {
    by: "lake",
    lowerLevel: tailwaterElevation,
    lowerName: "tailwater",
    mayFallShort: false,
  } as const;
  return [
    { name: "penstock", size: "penstock", at: ["penstock"], pipe: penstock, flow, drive },
    { ...cooling, flow: flow === 0 ? 0 : cooling.flow },
  ];
}

export const hydropower: StructureKind<Hydropower> = {
  kind: "hydropower",
  title: "Hydropower plant",
  name: "power plant",
  commonFields: ["efficiency", "flow", "penstock/roughness", "coolingWater/roughness"],
  isBuilt: true,
  hasPublishedCosts: true,
  lowestField: "elevation",
  reach: atOneElevation,
  size: (plant) => [
    `${counted(plant.units, "unit")}, up to `,
    sized(largestFlow(plant), "flow"),
    ` each${runningWords[plantRunning(plant).from]}, penstock `,
    ...boreWords(plant.penstock),
    ...fittingWords(plant.coolingWater, "cooling water"),
  ],
  inlet: (plant) => ({ elevation: plant.elevation, flow: plantRunning(plant).flow }),
  rack: (plant) => ({ rack: plant.rack, flow: largestFlow(plant) }),
  pipes: pipesOf,
  walls: (plant) => {
    const { flow, share } = plantRunning(plant);
    return [
      upstreamWall(rackWall(plant.rack, plant.elevation, { flow, share }), flow, plant.units),
      upstreamWall(pipeWall(plant.penstock, plant.elevation, { flow, share }), flow, plant.units),
    ];
  },
  components: hydropowerComponents,
  cleanEnergy: plantEnergy,
  cleanService: (plant, context) => [energyNotMade(plant, context)],
  entries: plantEntries,
  lowered: (plant, { fall, flowShare }) => ({
    ...plant,
    elevation: plant.elevation - fall,
    flow: plant.flow?.map((flow) => flow * flowShare),
    running: plant.running && {
      ...plant.running,
      flow: plant.running.flow.map((flow) => flow * flowShare),
    },
  }),
};
