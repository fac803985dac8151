import { at } from "../../../lists.js";
import type { Plan } from "../component.js";
import { areAmong } from "./dates.js";
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

/** The same of what stands and the dates alone. */
function meanDated({ byYear }: Tried): number {
  let sum = 0;
  for (const each of byYear) sum += each.dated;
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
 * One with all dates of another before it has no less work, and is not begun while that other's alone costs more.
 */
export function cheapestOf(contenders: readonly Contender[], tryOut: (contender: Contender) => Tried): Tried {
  const begun: Tried[] = [];
  const least = new Float64Array(contenders.length);
  for (;;) {
    const place = placeOfLeast(least);
    const contender = contenders[place];
    if (!contender)
      throw new Error("no plan of the catalogue is possible for a part: it must have one that always is");
    const tried = begun[place];
    const known = tried ? meanValue(tried) : valueOfRarer(place, contenders, { begun, least });
    if (known > (least[place] ?? 0)) least[place] = known;
    else if (tried === undefined) begun[place] = tryOut(contender);
    else if (reckonOn(tried)) return tried;
    else least[place] = meanValue(tried);
  }
}

/** What a contender costs at least by the last one before it whose dates are all among its own; 0 if there is none. */
function valueOfRarer(
  place: number,
  contenders: readonly Contender[],
  { begun, least }: { begun: readonly Tried[]; least: Float64Array },
): number {
  const { plan } = at(contenders, place);
  for (let before = place - 1; before >= 0; before--) {
    const other = at(contenders, before).plan;
    if (other.entry !== plan.entry) return 0;
    if (!areAmong(other, plan)) continue;
    const tried = begun[before];
    return tried ? meanDated(tried) : at(least, before);
  }
  return 0;
}

/** The first of the least; a value that is no number is passed over. */
function placeOfLeast(values: Float64Array): number {
  let place = 0;
  let least = Infinity;
  for (let other = 0; other < values.length; other++) {
    const value = values[other] ?? Infinity;
    if (!(value < least)) continue;
    place = other;
    least = value;
  }
  return place;
}
