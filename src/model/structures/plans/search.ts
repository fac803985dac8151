import type { Plan } from "../component.js";
import type { PlanValue } from "./value.js";

/** A plan as it is in each possible operating year; in some it may be what is done in its place. */
export interface Contender {
  readonly plan: Plan;
  readonly byYear: readonly Plan[];
}

/** A contender with its value in each year. */
export interface Tried {
  readonly contender: Contender;
  readonly byYear: readonly PlanValue[];
}

/** Mean of the operating years, as far as it is reckoned: never above the whole. */
export function meanValue({ byYear }: Tried): number {
  let sum = 0;
  for (const each of byYear) sum += each.atLeast;
  return sum / byYear.length;
}

/** Reckons a contender to the end. */
export function reckonedOut(tried: Tried): Tried {
  while (!reckonOn(tried));
  return tried;
}

/** A step in each operating year. @returns true once all of them are whole */
function reckonOn({ byYear }: Tried): boolean {
  let isWhole = true;
  for (const each of byYear) {
    if (each.isWhole) continue;
    each.reckonOn();
    isWhole = false;
  }
  return isWhole;
}

/**
 * The contender of least present value; the first listed wins a tie. Always the one that costs least so far is
 * reckoned on by a step: once it is whole, the others cost no less, and what it found is what trying all would find.
 */
export function cheapestOf(all: readonly Tried[]): Tried {
  const least = all.map(meanValue);
  for (;;) {
    const place = placeOfLeast(least);
    const tried = all[place];
    if (!tried)
      throw new Error("no plan of the catalogue is possible for a part: it must have one that always is");
    const known = meanValue(tried);
    if (known > (least[place] ?? Infinity)) least[place] = known;
    else if (reckonOn(tried)) return tried;
    else least[place] = meanValue(tried);
  }
}

function placeOfLeast(values: readonly number[]): number {
  let place = 0;
  for (let other = 1; other < values.length; other++) {
    if ((values[other] ?? Infinity) < (values[place] ?? Infinity)) place = other;
  }
  return place;
}
