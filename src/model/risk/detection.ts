import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { months } from "../lake/calendar.js";

/** Kinds of samples in which mussels may be found, with the assumption of what is found in one. */
export const findsPerSample = {
  planktonTows: "detection.per-plankton-tow",
  settlementPlates: "detection.per-settlement-plate",
  searches: "detection.per-search",
  ednaSamples: "detection.per-edna-sample",
} as const;

export type SampleKind = keyof typeof findsPerSample;

/** Samples a year of each kind; none of a kind that is absent. */
export type SamplesPerYear = { readonly [Kind in SampleKind]?: number | undefined };

const kinds = Object.keys(findsPerSample) as SampleKind[];

/**
 * Chance to notice, in each year a of an infestation, mussels that no sample found before: p(a) = 1 − exp(−D(a) Σ n λ).
 * With n samples of a kind a year, λ detections expected in one at full density (tow-detection has chances for tows)
 * and the density D over capacity, finds are independent and in proportion to density: Poisson.
 * @param density D: mean over the first, second, … year since establishment
 */
export function chanceBySamples(
  samples: SamplesPerYear,
  density: readonly number[],
  source: Assumed,
): number[] {
  const taken = kinds.filter((kind) => samples[kind]);
  const effort = taken.reduce((sum, kind) => sum + (samples[kind] ?? 0) * source(findsPerSample[kind]), 0);
  return density.map((share) => -Math.expm1(-effort * share));
}

/**
 * Chance of notice in each year of what was not noticed before, from chances Q to have noticed by the end of the first,
 * second, … year: p(a) = (Q(a) − Q(a−1))/(1 − Q(a−1)). What is left after the last is noticed in the next year.
 * @param within Q: never falling, 0 to 1
 */
export function chanceByAgeOf(within: readonly number[]): number[] {
  return within.map((chance, age) => {
    const before = within[age - 1] ?? 0;
    return before === 1 ? 1 : (chance - before) / (1 - before);
  });
}

/** Chance to have noticed by the end of the first, second, … year of an infestation: 1 − Π (1−p). */
export function noticedBy(chanceByAge: readonly number[], years: number): number[] {
  let unnoticed = 1;
  return Array.from({ length: years }, (_, age) => {
    unnoticed *= 1 - (chanceByAge[age] ?? 1);
    return 1 - unnoticed;
  });
}

/**
 * Years that an infestation is expected to pass unnoticed, d = Σ (1 − Q(a)) with the chance Q to have noticed by the
 * end of year a: of a steady chance p, (1−p)/p.
 */
export function meanDelay(chanceByAge: readonly number[]): number {
  return noticedBy(chanceByAge, chanceByAge.length).reduce((sum, noticed) => sum + 1 - noticed, 0);
}

/** Mean of each year of a list by months. */
export function yearlyMeans(byMonth: readonly number[]): number[] {
  const years = Array.from({ length: byMonth.length / months.length }, (_, year) => year);
  const meanOf = (year: number) =>
    months.reduce((sum, month) => sum + at(byMonth, year * months.length + month), 0) / months.length;
  return years.map(meanOf);
}
