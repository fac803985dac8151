import type { DimensionName } from "../units/dimensions.js";

/** Units that assumptions are written in, with the dimension by which an engineer's override is read. */
export const assumptionUnits = {
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
  "$/(m3/s)": undefined,
  "1": undefined,
  "1/m2": undefined,
  "kg/m3": undefined,
  "m2/s": undefined,
  "m2K/W": undefined,
  kPa: undefined,
  "1/degC.d": undefined,
  "kWh/m3.K": undefined,
} as const satisfies Record<string, { dimension: DimensionName; perCoherent: number } | undefined>;

export type AssumptionUnit = keyof typeof assumptionUnits;
