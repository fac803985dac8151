import type { Boats, ProgramOption, StudyInput } from "../../src/model/inputs.js";
import type { Hydropower, Intake, PumpSupply, Rack } from "../../src/model/structures/inputs.js";
import type { Dock } from "../../src/model/structures/kinds/dock.js";
import type { LakeWide } from "../../src/model/structures/kinds/lake-wide.js";
import type { Ramp } from "../../src/model/structures/kinds/ramp.js";
import type { ServiceLine } from "../../src/model/structures/kinds/service-line.js";
import type { Structure } from "../../src/model/structures/kinds.js";
import { assumptionSet } from "./assumptions.js";
import { drawnDownLake } from "./lakes.js";
import { everyMonth } from "./near.js";
import { thoroughSteps } from "./steps.js";

const rack: Rack = {
  width: 3,
  height: 3,
  barThickness: 0.01,
  clearSpacing: 0.06,
  barDepth: 0.06,
  barShape: "rectangular",
  angle: 75,
  headLossLimit: 0.15,
  velocityLimit: 0.6,
};

export const pumpedIntake: Intake = {
  id: "city-intake",
  name: "City intake",
  kind: "intake",
  bearer: "city",
  fixtures: [{ name: "gates", count: 2, hoursEach: 10 }],
  pinned: [],
  elevation: 88,
  demand: [0.5, 0.5, 0.6, 0.7, 0.9, 1.1, 1.2, 1.2, 1, 0.7, 0.6, 0.5],
  rack,
  conduit: { length: 1500, diameter: 1.1, roughness: 0.0005, minorLoss: 2 },
  supply: { by: "pump", efficiency: 0.75, marginHead: 2, energyPrice: 0.08 },
  alternativeWater: 0.25,
  oxidantAllowed: true,
};

/** A pump known by one point of its curve, which lifts 25 m from the full lake. */
export const curvePump: PumpSupply = {
  by: "pump",
  efficiency: 0.75,
  energyPrice: 0.08,
  curve: [{ flow: 1.3, head: 34 }],
  deliveryElevation: 125,
  control: "on-off",
};

export const gravityIntake: Intake = {
  ...pumpedIntake,
  id: "canal-intake",
  name: "Canal intake",
  bearer: "irrigators",
  fixtures: [],
  pinned: [],
  supply: { by: "gravity", availableHead: 4 },
  alternativeWater: 0.07,
  oxidantAllowed: false,
};

export const plant: Hydropower = {
  id: "powerhouse",
  name: "Powerhouse",
  kind: "hydropower",
  bearer: "power-fund",
  fixtures: [],
  pinned: [],
  units: 2,
  elevation: 84,
  tailwaterElevation: 60,
  efficiency: 0.87,
  flow: everyMonth(12),
  energyPrice: everyMonth(0.05),
  rack: { ...rack, width: 7, height: 8 },
  penstock: { length: 150, diameter: 2.9, roughness: 0.0002, minorLoss: 0.6 },
  coolingWater: {
    length: 60,
    diameter: 0.1,
    roughness: 0.0002,
    minorLoss: 8,
    requiredFlow: 0.008,
    availableHead: 4,
  },
};

export const sealWater: ServiceLine = {
  id: "seal-water",
  name: "Seal water",
  kind: "service-line",
  bearer: "authority",
  fixtures: [],
  pinned: [],
  elevation: 85,
  count: 3,
  length: 60,
  diameter: 0.1,
  roughness: 0.0002,
  minorLoss: 8,
  requiredFlow: 0.008,
  availableHead: 4,
  shortageCostPerDay: 400,
  oxidantAllowed: true,
};

export const floatingDock: Dock = {
  id: "marina",
  name: "Marina docks",
  kind: "dock",
  bearer: "marina",
  fixtures: [],
  pinned: [],
  count: 5,
  floating: true,
  depth: 0.5,
  wettedArea: 400,
  spareBuoyancy: 10,
  replacementCost: 150_000,
};

export const fixedDock: Dock = {
  id: "pier",
  name: "Pier",
  kind: "dock",
  bearer: "authority",
  fixtures: [],
  pinned: [],
  count: 1,
  floating: false,
  elevation: 88,
  wettedArea: 250,
  replacementCost: 200_000,
};

export const ramp: Ramp = {
  id: "ramp",
  name: "Launch ramp",
  kind: "ramp",
  bearer: "authority",
  fixtures: [],
  pinned: [],
  width: 15,
  topElevation: 100,
  bottomElevation: 90,
  slope: 0.14,
  launchesPerDay: everyMonth(20),
  launchFee: 12,
};

export const duties: LakeWide = {
  id: "duties",
  name: "Lake-wide duties",
  kind: "lake-wide",
  bearer: "authority",
  fixtures: [],
  pinned: [],
  items: [
    { name: "Monitoring", cost: 40_000, apart: false, fromYear: 1 },
    { name: "Lost visits", cost: 150_000, apart: true, fromYear: 3 },
  ],
};

/** Yearly chance of the only way in beside the boats. */
export const otherChance = 0.002;

/** Boats' own way alone: comparable lakes weigh nothing, so that a chance can be worked out by hand. */
export const ownWayAlone: Boats["comparable"] = {
  rate: { kind: "unknown" },
  checksLetThrough: 1,
  weightOfBoats: 1,
};

export const boats: Boats = {
  launches: everyMonth(1500),
  classes: [
    { id: "local", name: "Local", share: 0.975, fouled: 0 },
    { id: "infested", name: "From infested waters", share: 0.025, fouled: 0.03 },
  ],
  otherWays: [{ name: "Other ways", chance: otherChance, checked: false }],
  comparable: ownWayAlone,
};

export const noProgram: ProgramOption = {
  id: "none",
  name: "No program",
  rampUp: [],
  staff: [],
  equipment: [],
  yearly: [{ name: "Monitoring", cost: 9000 }],
  fees: [],
  afterInfestation: { share: 0 },
};

export const program: ProgramOption = {
  id: "stations",
  name: "Stations",
  steps: {
    ...thoroughSteps,
    coverage: 0.9,
    declaration: 0.5,
    quickCheck: 0.8,
    inspection: 0.79,
    hotWash: 0.84,
    deterrence: 0.2,
  },
  rampUp: [],
  staff: [{ name: "Inspectors", hoursPerYear: 3000, wage: 23, loading: 0.25 }],
  equipment: [{ name: "Hot-wash unit", count: 1, price: 17_000, life: 8 }],
  yearly: [{ name: "Supplies", cost: 20_000 }],
  fees: [{ name: "Stickers", countPerYear: 2000, fee: 10 }],
  afterInfestation: { share: 0.2 },
};

const bearers = ["authority", "city", "irrigators", "power-fund", "marina"];

/** An invented study with a structure of each kind, 20 years at 3 %, mid-year. */
export const wholeStudy: StudyInput = {
  plans: assumptionSet.plans,
  lake: drawnDownLake,
  structures: [pumpedIntake, gravityIntake, plant, floatingDock, fixedDock, ramp, duties],
  boats,
  options: [noProgram, program],
  money: {
    currency: "USD",
    priceYear: 2025,
    startYear: 2027,
    horizon: 20,
    discountRate: 0.03,
    timing: "mid-year",
    fiscalYearStart: 1,
    inflation: 0,
    programBearer: "authority",
    bearers: bearers.map((id) => ({ id, name: id })),
  },
};

export function studyOf(structures: readonly Structure[], changes: Partial<StudyInput> = {}): StudyInput {
  return { ...wholeStudy, structures, ...changes };
}
