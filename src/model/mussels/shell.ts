import type { Assumed } from "../assumed.js";

export interface ShellParameters {
  /** ln of the wet mass in g of a shell of 1 mm. */
  readonly massIntercept: number;
  readonly massExponent: number;
  readonly maximumMm: number;
  readonly settlementMm: number;
  /** von Bertalanffy rate per degree-day above the base temperature. */
  readonly ratePerDegreeDay: number;
  readonly baseTemperature: number;
}

export function shellParameters(assumed: Assumed): ShellParameters {
  return {
    massIntercept: assumed("shell.mass-intercept"),
    massExponent: assumed("shell.mass-exponent"),
    maximumMm: assumed("shell.maximum-length"),
    settlementMm: assumed("shell.settlement-length"),
    ratePerDegreeDay: assumed("shell.growth-rate"),
    baseTemperature: assumed("shell.growth-base-temperature"),
  };
}

/** Live wet mass of one mussel, g: ln W = a + b ln L, natural logarithms (Kehne 2022). */
export function wetMassG(lengthMm: number, { massIntercept, massExponent }: ShellParameters): number {
  return Math.exp(massIntercept + massExponent * Math.log(lengthMm));
}

/**
 * Length after a spell of warmth, mm: von Bertalanffy in degree-days,
 * L = Lmax − (Lmax − L0)·exp(−k·DD), so that a shell stands still in the cold and never passes its maximum.
 * Form: von Bertalanffy 1938; largest length and rate: Karatayev and others 2006 (both from memory).
 * @param left room to grow that the spell leaves over the room before it
 */
export function grownLengthMm(lengthMm: number, left: number, { maximumMm }: ShellParameters): number {
  return maximumMm - (maximumMm - lengthMm) * left;
}

/** Room to grow that a spell of warmth leaves over the room before it: exp(−k·DD). */
export function roomLeft(degreeDays: number, { ratePerDegreeDay }: ShellParameters): number {
  return Math.exp(-ratePerDegreeDay * degreeDays);
}
