import { at, sumOf } from "../../lists.js";
import { type FoundCourse, watchAfter } from "../risk/course.js";
import type { Detection } from "../risk/state-probabilities.js";
import { establishmentYear } from "./future.js";

/** Draws of luck for each year: whether mussels establish again, are found, and an attempt succeeds. */
export const drawsPerYear = 3;

interface Luck {
  /** In which year mussels first establish: see `optionFuture`. */
  readonly luck: number;
  readonly draws: readonly number[];
  readonly cleanYears: number;
}

/**
 * One course as it comes out, year by year as the chances of `stateProbabilities` have it: mussels establish, are found
 * early or late, an attempt is made where it is not too late, and what it rids of them may be infested again from the
 * next year on.
 */
export function simulatedCourse(
  hazards: readonly number[],
  { chanceByAge, containment }: Detection,
  { luck, draws, cleanYears }: Luck,
): FoundCourse {
  const first = establishmentYear(hazards, luck);
  const years = hazards.length;
  const found = Array<number>(years).fill(0);
  const tried = Array<number>(years).fill(0);
  const contained = Array<number>(years).fill(0);
  const ageWhileKnown = Array<number>(years).fill(-1);
  let since = -1;
  let isKnown = false;
  let begun = 0;
  for (let year = first; year < years; year++) {
    const ofYear = year * drawsPerYear;
    if (since < 0 && (year === first || at(draws, ofYear) < at(hazards, year))) {
      since = year;
      begun++;
    }
    if (since < 0) continue;
    const age = year - since;
    const isNew: boolean = !isKnown && at(draws, ofYear + 1) < (chanceByAge[age] ?? 1);
    isKnown ||= isNew;
    if (isKnown) ageWhileKnown[year] = age;
    if (!isNew) continue;
    found[year] = 1;
    if (!containment || age >= containment.latestAge) continue;
    tried[year] = 1;
    if (at(draws, ofYear + 2) >= containment.success) continue;
    contained[year] = 1;
    since = -1;
    isKnown = false;
  }
  return {
    times: {
      found: sumOf(found),
      tried: sumOf(tried),
      contained: sumOf(contained),
      returned: Math.max(0, begun - 1),
    },
    payments: {
      found,
      tried,
      known: (fromAge) => ageWhileKnown.map((age) => Number(age >= fromAge)),
      ...watchAfter(contained, cleanYears),
    },
  };
}
