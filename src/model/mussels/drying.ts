import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { Lake, Species } from "../lake/lake.js";

/** Air that a stranded mussel lies in. */
export interface Air {
  readonly temperature: number;
  readonly humidity: number;
}

export interface DryingParameters {
  readonly referenceHours: number;
  readonly referenceLengthMm: number;
  readonly referenceAir: Air;
  readonly steepness: number;
  readonly lengthExponent: number;
  readonly smallestLengthMm: number;
  /** Loss at zero vapour-pressure deficit at the reference temperature, kPa. */
  readonly baseDeficit: number;
  readonly baseDeficitQ10: number;
  readonly speciesFactor: number;
  /** Air temperature (°C) against hours that kill a single mussel, from mild to hard frost. */
  readonly frost: ReadonlyArray<readonly [temperature: number, hours: number]>;
  readonly clusterFactor: number;
  /** Survival at the published killing time. */
  readonly frostSurvival: number;
}

/** Air temperatures whose killing hours are published, from mild to hard frost, with the assumption that has them. */
const frostHours = [
  [0, "drying.frost-hours.minus-0"],
  [-1.5, "drying.frost-hours.minus-1.5"],
  [-3, "drying.frost-hours.minus-3"],
  [-10, "drying.frost-hours.minus-10"],
] as const;

export function dryingParameters(species: Species, assumed: Assumed): DryingParameters {
  return {
    referenceHours: assumed("drying.reference-hours"),
    referenceLengthMm: assumed("drying.reference-length"),
    referenceAir: {
      temperature: assumed("drying.reference-temperature"),
      humidity: assumed("drying.reference-humidity"),
    },
    steepness: assumed("drying.steepness"),
    lengthExponent: assumed("drying.length-exponent"),
    smallestLengthMm: assumed("drying.smallest-length"),
    baseDeficit: assumed("drying.base-deficit"),
    baseDeficitQ10: assumed("drying.base-deficit-q10"),
    speciesFactor: species === "zebra" ? 1 : assumed("drying.quagga-factor"),
    frost: frostHours.map(([temperature, id]) => [temperature, assumed(id)] as const),
    clusterFactor: assumed("drying.cluster-factor"),
    frostSurvival: assumed("drying.frost-survival"),
  };
}

/**
 * Saturation vapour pressure over water, kPa: Magnus form, es = 0.6112 exp(17.62 T/(243.12 + T)), coefficients of
 * World Meteorological Organization, WMO-No. 8 (from memory).
 */
export function saturationVapourPressure(temperatureC: number): number {
  return 0.6112 * Math.exp((17.62 * temperatureC) / (243.12 + temperatureC));
}

/** Vapour-pressure deficit of air, kPa: δ = es (1 − H). */
export function vapourPressureDeficit({ temperature, humidity }: Air): number {
  return saturationVapourPressure(temperature) * (1 - humidity);
}

/** How fast air dries a mussel relative to the reference air; 1 at the reference. */
function dryingPace(air: Air, parameters: DryingParameters): number {
  const { referenceAir, baseDeficit, baseDeficitQ10 } = parameters;
  const loss = ({ temperature, humidity }: Air) =>
    vapourPressureDeficit({ temperature, humidity }) +
    baseDeficit * baseDeficitQ10 ** ((temperature - referenceAir.temperature) / 10);
  return loss(air) / loss(referenceAir);
}

/**
 * Hours after which half the mussels of a length are dead in air above freezing:
 * h50 = h0 q (max(L, Lmin)/Lr)^x · (δr + β)/(δ + β Q^((T − Tr)/10)). Fitted to Ricciardi and others 1995.
 */
export function halfLifeHours(lengthMm: number, air: Air, parameters: DryingParameters): number {
  const { referenceHours, speciesFactor } = parameters;
  return (referenceHours * speciesFactor * lengthFactor(lengthMm, parameters)) / dryingPace(air, parameters);
}

/** Half-life of a mussel of a length over that of the reference length. */
export function lengthFactor(lengthMm: number, parameters: DryingParameters): number {
  const { smallestLengthMm, referenceLengthMm, lengthExponent } = parameters;
  return (Math.max(lengthMm, smallestLengthMm) / referenceLengthMm) ** lengthExponent;
}

/**
 * Hours of frost that kill a single mussel, from the published table (Payne 1992), linear in temperature on the
 * logarithm of the hours, ln hk = ln h1 + (ln h2 − ln h1)·(T1 − T)/(T1 − T2); infinite above the table, the last
 * value below it.
 */
export function frostKillHours(temperature: number, parameters: DryingParameters): number {
  const { frost } = parameters;
  const milder = frost.findLast(([limit]) => temperature <= limit);
  if (!milder) return Infinity;
  const harder = frost.find(([limit]) => temperature > limit);
  if (!harder) return milder[1];
  const share = (milder[0] - temperature) / (milder[0] - harder[0]);
  return Math.exp(Math.log(milder[1]) + (Math.log(harder[1]) - Math.log(milder[1])) * share);
}

/** What a stretch of dry hours does: doses that add up over a dry run. Size enters when survival is read. */
export interface DryDose {
  /** Hours over the half-life of a mussel of the reference length. */
  readonly drying: number;
  /** Hours over the killing time in frost, cluster included. */
  readonly frost: number;
}

export const noDose: DryDose = { drying: 0, frost: 0 };

/** Hours in some air that are a dose of one. */
export interface DeadlyHours {
  readonly drying: number;
  readonly frost: number;
}

const deadlyHours = (air: Air, parameters: DryingParameters): DeadlyHours => ({
  drying: halfLifeHours(parameters.referenceLengthMm, air, parameters),
  frost: frostKillHours(air.temperature, parameters) * parameters.clusterFactor,
});

export const doseOf = (hours: number, { drying, frost }: DeadlyHours): DryDose => ({
  drying: hours / drying,
  frost: hours / frost,
});

export const dryDose = (hours: number, air: Air, parameters: DryingParameters): DryDose =>
  doseOf(hours, deadlyHours(air, parameters));

/** In the lake's air, by month. */
export const deadlyByMonth = (
  { airTemperature, humidity }: Lake,
  parameters: DryingParameters,
): DeadlyHours[] =>
  airTemperature.map((temperature, month) =>
    deadlyHours({ temperature, humidity: at(humidity, month) }, parameters),
  );

export function addDose(a: DryDose, b: DryDose): DryDose {
  return { drying: a.drying + b.drying, frost: a.frost + b.frost };
}

/**
 * Share of mussels of a length that outlives a dose: log-logistic in the drying dose X = Σ h/h50, times
 * log-logistic in the frost dose F = Σ h/(hk u), S = 1/(1 + X^k) · 1/(1 + F^k (1−σ)/σ). A surface fitted to points
 * of Ricciardi and others 1995 and Payne 1992; the note of each `drying.` assumption names them.
 */
export function survival(dose: DryDose, lengthMm: number, parameters: DryingParameters): number {
  return survivalBy(dose, lengthFactor(lengthMm, parameters), parameters);
}

/** The same of mussels whose half-life is known. @param factor their half-life over that of the reference length */
export function survivalBy(dose: DryDose, factor: number, parameters: DryingParameters): number {
  if (dose === noDose) return 1;
  const { steepness, frostSurvival } = parameters;
  const drying = (dose.drying / factor) ** steepness;
  if (dose.frost === 0) return 1 / (1 + drying);
  const frostScale = (1 - frostSurvival) / frostSurvival;
  return 1 / (1 + drying) / (1 + frostScale * dose.frost ** steepness);
}
