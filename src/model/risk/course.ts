import { at, noElement, numbersBy, sumOf } from "../../lists.js";
import { weightedTotal } from "./expectation.js";
import type { StateProbabilities } from "./state-probabilities.js";

/** When something is paid once mussels are found: each time, at each attempt, or for each year. */
export const paidWhen = ["found", "tried", "known", "watched", "delisted"] as const;
export type PaidWhen = (typeof paidWhen)[number];

/** Payments in each year of a horizon: how many are expected, or were made. */
export interface FoundPayments {
  readonly found: readonly number[];
  readonly tried: readonly number[];
  /** Years in which the lake is known to be infested, from a year of the infestation on, counted from 0. */
  readonly known: (fromAge: number) => readonly number[];
  /** The clean years after each success, and the end of the last of them. */
  readonly watched: readonly number[];
  readonly delisted: readonly number[];
}

/** Times that mussels are found, early enough for an attempt, rid of by it, and that they come again after that. */
export interface FoundTimes {
  readonly found: number;
  readonly tried: number;
  readonly contained: number;
  readonly returned: number;
}

/** What may happen once mussels are found, over the horizon. */
export interface FoundCourse {
  readonly times: FoundTimes;
  readonly payments: FoundPayments;
}

/** A phase once it has its price. */
export interface PricedPhase {
  readonly when: PaidWhen;
  readonly parts: readonly PhasePart[];
}

interface PhasePart {
  /** Each time or a year, in prices of the price year. */
  readonly amount: number;
  /** Year of an infestation, counted from 0, before which it is not paid. */
  readonly fromAge: number;
  /** Present value of 1 of it in each year of the horizon, with the rise of its price. */
  readonly inYear: readonly number[];
}

interface Attempts {
  /** s: 0 where nothing is tried. */
  readonly success: number;
  /** n: clean years before the lake is taken off the list. */
  readonly cleanYears: number;
}

/**
 * The course from the exact chances of each year. What is found in year t is D(t) = Σ N(t,e) − K(t−1), with the chances N
 * to be infested and known during it and K when the one before ended; of these A(t) are tried and s A(t) succeed. The
 * watch after a success in year t runs over years t+1 to t+n, also where mussels come again meanwhile. Mussels come
 * again as often as they establish at all, Σ F(t), less the chance that they ever do.
 */
export function foundCourse(statesByYear: readonly StateProbabilities[], attempts: Attempts): FoundCourse {
  const payments = foundPayments(statesByYear, attempts);
  const { success } = attempts;
  return {
    payments,
    times: {
      found: sumOf(payments.found),
      tried: sumOf(payments.tried),
      contained: sumOf(payments.tried.map((each) => each * success)),
      returned: success > 0 ? expectedReturns(statesByYear) : 0,
    },
  };
}

/** The payments of `foundCourse`. */
export function foundPayments(
  statesByYear: readonly StateProbabilities[],
  { success, cleanYears }: Attempts,
): FoundPayments {
  const years = statesByYear.length;
  const noticedFrom = (year: number, fromAge: number) => {
    const { noticed } = at(statesByYear, year);
    return sumOf(fromAge === 0 ? noticed : noticed.slice(0, -fromAge));
  };
  const tried = numbersBy(years, (year) => at(statesByYear, year).attempts);
  return {
    found: numbersBy(years, (year) =>
      Math.max(0, noticedFrom(year, 0) - (statesByYear[year - 1]?.known ?? 0)),
    ),
    tried,
    known: (fromAge) => numbersBy(years, (year) => noticedFrom(year, fromAge)),
    ...watchAfter(
      tried.map((each) => each * success),
      cleanYears,
    ),
  };
}

/** @param contained successes in each year */
export function watchAfter(
  contained: readonly number[],
  cleanYears: number,
): Pick<FoundPayments, "watched" | "delisted"> {
  const watched: number[] = [];
  const delisted: number[] = [];
  for (let year = 0; year < contained.length; year++) {
    let sum = 0;
    for (let success = Math.max(0, year - cleanYears); success < year; success++)
      sum += contained[success] ?? noElement(contained, success);
    watched.push(sum);
    delisted.push(contained[year - cleanYears] ?? 0);
  }
  return { watched, delisted };
}

function expectedReturns(statesByYear: readonly StateProbabilities[]): number {
  let never = 1;
  let established = 0;
  statesByYear.forEach(({ unnoticed, noticed }, year) => {
    const clean = 1 - (statesByYear[year - 1]?.infested ?? 0);
    const begun = at(unnoticed, year) + at(noticed, year);
    established += begun;
    if (clean > 0) never *= 1 - begun / clean;
  });
  return Math.max(0, established - (1 - never));
}

/** Present value of a phase: of what is expected, or of what was paid. */
export function phaseWorth({ when, parts }: PricedPhase, payments: FoundPayments): number {
  let worth = 0;
  for (const { amount, fromAge, inYear } of parts)
    worth += amount * weightedTotal(paymentsOf(payments, when, fromAge), inYear);
  return worth;
}

export const paymentsOf = (payments: FoundPayments, when: PaidWhen, fromAge: number): readonly number[] =>
  when === "known" ? payments.known(fromAge) : payments[when];
