import type { AssumptionUnit } from "../model/register/expected.js";
import type { DimensionName } from "../units/dimensions.js";

interface OverrideDimension {
  readonly dimension: DimensionName;
  readonly perCoherent: number;
  /** Whether a number without a unit is taken in the unit of the entry: studies have such from before units were read. */
  readonly mayBeBare?: true;
}

/** The dimension by which an engineer's override is read; without one, a bare number in the unit of the entry. */
export const overrideDimensions = {
  share: { dimension: "share", perCoherent: 1 },
  "1/yr": { dimension: "yearlyShare", perCoherent: 1 },
  yr: { dimension: "years", perCoherent: 1 },
  d: { dimension: "duration", perCoherent: 1 },
  h: { dimension: "hours", perCoherent: 1 },
  degC: { dimension: "temperature", perCoherent: 1 },
  "m/s": { dimension: "speed", perCoherent: 1 },
  m: { dimension: "length", perCoherent: 1 },
  mm: { dimension: "smallLength", perCoherent: 1000 },
  "m3/s": { dimension: "flow", perCoherent: 1 },
  "mg/L": { dimension: "concentration", perCoherent: 1 },
  "g/L": { dimension: "salinity", perCoherent: 1 },
  "uS/cm": { dimension: "conductivity", perCoherent: 1 },
  "kg/m2": { dimension: "areaMass", perCoherent: 1 },
  $: { dimension: "money", perCoherent: 1 },
  "$/m2": { dimension: "moneyPerArea", perCoherent: 1 },
  "$/kg": { dimension: "moneyPerMass", perCoherent: 1 },
  "$/m3": { dimension: "moneyPerVolume", perCoherent: 1 },
  "$/h": { dimension: "moneyPerHour", perCoherent: 1 },
  "$/kWh": { dimension: "moneyPerEnergy", perCoherent: 1 },
  m2: { dimension: "area", perCoherent: 1 },
  "$/(m3/s)": { dimension: "moneyPerFlow", perCoherent: 1, mayBeBare: true },
  "1": undefined,
  "1/m2": { dimension: "countPerArea", perCoherent: 1, mayBeBare: true },
  "kg/m3": { dimension: "density", perCoherent: 1, mayBeBare: true },
  "m2/s": { dimension: "viscosity", perCoherent: 1, mayBeBare: true },
  "m2K/W": { dimension: "heatResistance", perCoherent: 1, mayBeBare: true },
  kPa: { dimension: "pressure", perCoherent: 1, mayBeBare: true },
  "1/degC.d": { dimension: "warmthRate", perCoherent: 1, mayBeBare: true },
  "kWh/m3.K": { dimension: "volumetricHeat", perCoherent: 1, mayBeBare: true },
} as const satisfies Record<AssumptionUnit, OverrideDimension | undefined>;
