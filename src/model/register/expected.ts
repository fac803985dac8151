/** Units in which the model reads assumptions. */
export const assumptionUnits = [
  "share",
  "1/yr",
  "yr",
  "d",
  "h",
  "degC",
  "m/s",
  "m",
  "mm",
  "m3/s",
  "mg/L",
  "g/L",
  "uS/cm",
  "kg/m2",
  "$",
  "$/m2",
  "$/kg",
  "$/m3",
  "$/h",
  "$/kWh",
  "m2",
  "$/(m3/s)",
  "1",
  "1/m2",
  "kg/m3",
  "m2/s",
  "m2K/W",
  "kPa",
  "1/degC.d",
  "kWh/m3.K",
] as const;

export type AssumptionUnit = (typeof assumptionUnits)[number];

/**
 * What a value may be, whatever its source: what the code can bear and what there can be. A check against slips of the
 * unit or of the keys, not a range of the value: that is its entry's low and high.
 */
export interface Bounds {
  /** The least that is allowed. */
  readonly from?: number | undefined;
  /** What a value must be greater than. */
  readonly above?: number | undefined;
  /** The most that is allowed. */
  readonly to?: number | undefined;
  /** What a value must be less than. */
  readonly below?: number | undefined;
}

/** The unit in which the model reads an assumption, and the bounds that it holds to. */
export interface Expected<Unit extends AssumptionUnit = AssumptionUnit> {
  readonly unit: Unit;
  readonly bounds: Bounds;
}

export const inUnit =
  <Unit extends AssumptionUnit>(unit: Unit) =>
  (bounds: Bounds): Expected<Unit> => ({ unit, bounds });

/** A part of a whole: 0 to 1. */
export const share = inUnit("share")({ from: 0, to: 1 });
/** A part of a whole that is neither nothing nor all of it. */
export const innerShare = inUnit("share")({ above: 0, below: 1 });
/** A part of a whole that is not nothing. */
export const positiveShare = inUnit("share")({ above: 0, to: 1 });
/** A pure number: a ratio, an exponent, a count. */
export const number = inUnit("1");
export const perYear = inUnit("1/yr");
export const years = inUnit("yr");
export const hours = inUnit("h");
export const degreesCelsius = inUnit("degC");
export const metresPerSecond = inUnit("m/s");
export const metres = inUnit("m");
export const millimetres = inUnit("mm");
export const flow = inUnit("m3/s");
export const milligramsPerLitre = inUnit("mg/L");
export const squareMetres = inUnit("m2");
export const kilogramsPerSquareMetre = inUnit("kg/m2");
export const kilogramsPerCubicMetre = inUnit("kg/m3");

/** What fits in a year. */
export const daysOfYear = inUnit("d")({ from: 0, to: 365 });

/** Beyond this a price is a slip of the keys: a million million dollars. */
const largestPrice = 1e12;

export const price = <Unit extends AssumptionUnit & `$${string}`>(unit: Unit): Expected<Unit> =>
  inUnit(unit)({ from: 0, to: largestPrice });
