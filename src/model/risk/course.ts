import { at, sumOf } from "../../lists.js";
import type { StateProbabilities } from "./state-probabilities.js";

/** What may happen once mussels are found, over the horizon: expected times, and what 1 paid each time is worth. */
export interface FoundCourse {
  /** Times that they are found, early enough for an attempt, and rid of by it. */
  readonly times: { readonly found: number; readonly tried: number; readonly contained: number };
  /** Present value of 1 paid each time they are found, and each time an attempt is made. */
  readonly found: number;
  readonly tried: number;
  /** Of 1 a year while the lake is known to be infested. */
  readonly known: number;
  /** Of 1 a year in the clean years after each success, and of 1 after the last of them. */
  readonly watched: number;
  readonly delisted: number;
}

/**
 * The course from the exact chances of each year. What is found in year t is D(t) = Σ N(t,e) − K(t−1), with the chances N
 * to be infested and known during it and K when the one before ended; of these A(t) are tried and s A(t) succeed. The
 * watch after a success in year t runs over years t+1 to t+n, also where mussels come again meanwhile.
 * @param success s; 0 where nothing is tried
 * @param cleanYears n
 */
export function foundCourse(
  statesByYear: readonly StateProbabilities[],
  factors: readonly number[],
  { success, cleanYears }: { readonly success: number; readonly cleanYears: number },
): FoundCourse {
  const known = statesByYear.map(({ noticed }) => sumOf(noticed));
  const found = known.map((during, year) => Math.max(0, during - (statesByYear[year - 1]?.known ?? 0)));
  const tried = statesByYear.map(({ attempts }) => attempts);
  const contained = tried.map((attempts) => attempts * success);
  const worth = (amounts: readonly number[]) =>
    sumOf(amounts.map((amount, year) => amount * at(factors, year)));
  const after = (from: number, to: number) => sumOf(factors.slice(from, to));
  return {
    times: { found: sumOf(found), tried: sumOf(tried), contained: sumOf(contained) },
    found: worth(found),
    tried: worth(tried),
    known: worth(known),
    watched: sumOf(contained.map((chance, year) => chance * after(year + 1, year + 1 + cleanYears))),
    delisted: sumOf(contained.map((chance, year) => chance * (factors[year + cleanYears] ?? 0))),
  };
}
