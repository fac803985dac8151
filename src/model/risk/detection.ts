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

/** Chances to have found mussels by the end of the first four years at usual effort. */
export const foundWithin = [
  "detection.within-1-year",
  "detection.within-2-years",
  "detection.within-3-years",
  "detection.within-4-years",
] as const;

/**
 * Chance to notice, in each year a of an infestation, mussels that no sample found before: p(a) = 1 − (1 − p₀(a))^e.
 * p₀ follows from the chances to have found them within one to four years at usual effort, and stays at its fourth
 * from then on (first-finds). The effort e is Σ n λ of the samples a year, λ finds expected in one (tow-detection) against the tows of a usual effort:
 * twice the samples miss as often as two independent looks.
 */
export function chanceBySamples(samples: SamplesPerYear, years: number, source: Assumed): number[] {
  const effort = effortOf(samples, source);
  if (effort === 0) return Array<number>(years).fill(0);
  const usual = chanceByAgeOf(neverFalling(foundWithin.map(source)));
  const own = usual.map((chance) => 1 - (1 - chance) ** effort);
  return Array.from({ length: years }, (_, age) => at(own, Math.min(age, own.length - 1)));
}

/** e: finds expected in the samples of a year against those of a usual effort; 0 of none. */
export function effortOf(samples: SamplesPerYear, source: Assumed): number {
  const taken = kinds.filter((kind) => samples[kind]);
  const finds = taken.reduce((sum, kind) => sum + (samples[kind] ?? 0) * source(findsPerSample[kind]), 0);
  if (finds === 0) return 0;
  return finds / (source("detection.usual-tows") * source("detection.per-plankton-tow"));
}

/** Each at least the one before: chances to have found something do not fall, also where they are drawn apart. */
const neverFalling = (chances: readonly number[]): number[] =>
  chances.map((_, index) => Math.max(...chances.slice(0, index + 1)));

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
export function detectedBy(chanceByAge: readonly number[], years: number): number[] {
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
  return detectedBy(chanceByAge, chanceByAge.length).reduce((sum, noticed) => sum + 1 - noticed, 0);
}

/** Mean of each year of a list by months. */
export function yearlyMeans(byMonth: readonly number[]): number[] {
  const years = Array.from({ length: byMonth.length / months.length }, (_, year) => year);
  const meanOf = (year: number) =>
    months.reduce((sum, month) => sum + at(byMonth, year * months.length + month), 0) / months.length;
  return years.map(meanOf);
}
