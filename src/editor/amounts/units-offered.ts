import type { DimensionName } from "../../units/dimensions.js";

export type UnitSystem = "us" | "si";

/** Units offered in each system, as written; the first is the usual one. */
const units: Readonly<Record<DimensionName, Readonly<Record<UnitSystem, readonly string[]>>>> = {
  elevation: { us: ["ft"], si: ["m"] },
  length: { us: ["ft", "in", "mi"], si: ["m", "mm", "km"] },
  smallLength: { us: ["in", "ft"], si: ["mm", "cm", "m"] },
  area: { us: ["ft2"], si: ["m2"] },
  landArea: { us: ["acre", "mi2"], si: ["ha", "km2", "m2"] },
  volume: { us: ["acre-ft", "ft3", "gal"], si: ["m3", "ML"] },
  treatedVolume: { us: ["Mgal"], si: ["ML"] },
  flow: { us: ["cfs", "gpm", "mgd"], si: ["m3/s", "l/s"] },
  speed: { us: ["ft/s"], si: ["m/s"] },
  levelRate: { us: ["ft/d"], si: ["m/d"] },
  temperature: { us: ["degF"], si: ["degC"] },
  concentration: both("mg/L"),
  conductivity: both("uS/cm"),
  salinity: both("g/L"),
  angle: both("deg"),
  duration: both("d", "h"),
  hours: both("h"),
  shortTime: both("min", "h"),
  years: both("yr"),
  mass: { us: ["ton", "lb"], si: ["tonne", "kg"] },
  areaMass: { us: ["lb/ft2"], si: ["kg/m2"] },
  energy: both("MWh", "kWh"),
  heatTransfer: { us: ["BTU/(h ft2 degF)"], si: ["W/m2K"] },
  capacityRate: { us: ["BTU/(h degF)"], si: ["kW/K"] },
  density: { us: ["lb/ft3"], si: ["kg/m3"] },
  countPerArea: { us: ["/ft2"], si: ["/m2"] },
  viscosity: { us: ["ft2/s"], si: ["m2/s"] },
  heatResistance: { us: ["ft2 h degF/BTU"], si: ["m2K/W"] },
  pressure: { us: ["psi"], si: ["kPa"] },
  warmthRate: { us: ["1/degF.d"], si: ["1/degC.d"] },
  volumetricHeat: { us: ["BTU/(ft3 degF)"], si: ["kWh/m3K"] },
  share: both("%"),
  yearlyShare: both("%/yr"),
  yearlyChange: both("%/yr"),
  money: both(""),
  moneyPerYear: both("/yr"),
  moneyPerHour: both("/h"),
  moneyPerDay: both("/d"),
  moneyPerArea: { us: ["/ft2"], si: ["/m2"] },
  moneyPerLandArea: { us: ["/acre"], si: ["/ha"] },
  moneyPerMass: { us: ["/ton", "/lb"], si: ["/tonne", "/kg"] },
  moneyPerVolume: { us: ["/acre-ft", "/gal"], si: ["/m3"] },
  moneyPerTreatedVolume: { us: ["/Mgal"], si: ["/ML"] },
  moneyPerFlow: { us: ["/cfs", "/mgd"], si: ["/(m3/s)"] },
  moneyPerEnergy: both("/kWh", "/MWh"),
  count: both(""),
};

function both(...names: string[]): Record<UnitSystem, readonly string[]> {
  return { us: names, si: names };
}

/** Codes with a currency sign; other currencies are written by code. */
const signs: Readonly<Record<string, string>> = { USD: "$", EUR: "€", GBP: "£" };

/** Unit system and currency of a study. */
export interface Writing {
  readonly system: UnitSystem;
  /** Three-letter code. */
  readonly currency: string;
}

/** Units for a dimension, the study's system first; money has its currency before the stroke. */
export function unitsOffered(dimension: DimensionName, { system, currency }: Writing): string[] {
  const { us, si } = units[dimension];
  const all = [...new Set(system === "us" ? [...us, ...si] : [...si, ...us])];
  return dimension.startsWith("money") ? all.map((unit) => `${signs[currency] ?? currency}${unit}`) : all;
}
