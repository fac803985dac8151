import { at, sumOf } from "../../lists.js";

/** When an infestation is noticed, and what is tried then. */
export interface Detection {
  /** p: chance to notice, in its first, second, … year, an infestation that nobody knew of before; 1 past the list. */
  readonly chanceByAge: readonly number[];
  /** Year of an infestation, counted from 0, in which harm shows it for certain. */
  readonly firstHarmAge?: number | undefined;
  /** Tried once, in the year in which the infestation is noticed, if it is in its year `latestAge` or before. */
  readonly containment?: { readonly success: number; readonly latestAge: number } | undefined;
}

/** Nobody is ever unaware of mussels, and nothing is tried against them. */
export const detectedAtOnce: Detection = { chanceByAge: [] };

/** Whether an infestation goes the same way by both. */
export const goAlike = (one: Detection, other: Detection): boolean =>
  one.containment?.success === other.containment?.success &&
  one.containment?.latestAge === other.containment?.latestAge &&
  one.chanceByAge.length === other.chanceByAge.length &&
  one.chanceByAge.every((chance, age) => chance === other.chanceByAge[age]);

/** What may be in one year of the horizon. Lists run over the years of establishment, from year 1 to this one. */
export interface StateProbabilities {
  /** Chance that the lake is infested since that year and nobody knows. */
  readonly unnoticed: readonly number[];
  /** Chance that it is infested since that year and known to be, in this year or before. */
  readonly noticed: readonly number[];
  /** Expected attempts at containment. */
  readonly attempts: number;
  /** Chance of being infested when the year ends, after any containment. */
  readonly infested: number;
  /** Chance of being infested and known to be when the year ends. */
  readonly known: number;
}

/**
 * How an infestation may go, exactly and without sampling. A lake that is clean with chance C is infested in year t
 * with chance F = h(t) C(t−1). What was established in year e and is unnoticed, U, is noticed in its year a = t − e + 1
 * with chance p(a): N(t,e) = N(t−1,e) + (1−s) p(a) U(t−1,e). What is noticed in a year is contained with chance s, 0 for
 * what is too old: the lake is clean from the next year, C(t) = (1−h(t)) C(t−1) + s Σ p(a) U(t−1,e), and at risk again.
 * @param hazards h: chance of establishment in year 1, 2, … of the horizon, 0 to 1
 */
export function stateProbabilities(hazards: readonly number[], detection: Detection): StateProbabilities[] {
  const { containment } = detection;
  const unnoticed: number[] = [];
  const noticed: number[] = [];
  let clean = 1;
  return hazards.map((hazard, year) => {
    unnoticed.push(hazard * clean);
    noticed.push(0);
    clean *= 1 - hazard;
    let attempts = 0;
    let contained = 0;
    const newlyDetected = detectEach(unnoticed, noticed, detection);
    const unnoticedDuring = unnoticed.slice();
    const noticedDuring = noticed.slice();
    if (containment) {
      for (let since = Math.max(0, year - containment.latestAge + 1); since <= year; since++) {
        const tried = at(newlyDetected, since);
        attempts += tried;
        contained += tried * containment.success;
        noticed[since] = at(noticed, since) - tried * containment.success;
      }
      clean += contained;
    }
    return {
      unnoticed: unnoticedDuring,
      noticed: noticedDuring,
      attempts,
      infested: 1 - clean,
      known: sumOf(noticed),
    };
  });
}

/** Moves what is noticed in a year from one list to the other, and tells how much that was. */
function detectEach(unnoticed: number[], noticed: number[], { chanceByAge }: Detection): number[] {
  const newly: number[] = [];
  for (let since = 0; since < unnoticed.length; since++) {
    const undetected = unnoticed[since] ?? 0;
    const newlyDetected = undetected * (chanceByAge[unnoticed.length - 1 - since] ?? 1);
    unnoticed[since] = undetected - newlyDetected;
    noticed[since] = (noticed[since] ?? 0) + newlyDetected;
    newly.push(newlyDetected);
  }
  return newly;
}
