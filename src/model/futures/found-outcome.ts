import { at, numbersBy } from "../../lists.js";
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

const none = (years: number) => numbersBy(years, () => 0);

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
  const [found, tried, contained] = [none(years), none(years), none(years)];
  const ageWhileKnown = numbersBy(years, () => -1);
  const times = { found: 0, tried: 0, contained: 0 };
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
    times.found++;
    if (!containment || age >= containment.latestAge) continue;
    tried[year] = 1;
    times.tried++;
    if (at(draws, ofYear + 2) >= containment.success) continue;
    contained[year] = 1;
    times.contained++;
    since = -1;
    isKnown = false;
  }
  return {
    times: { ...times, returned: Math.max(0, begun - 1) },
    payments: {
      found,
      tried,
      known: (fromAge) => numbersBy(years, (year) => Number(at(ageWhileKnown, year) >= fromAge)),
      ...watchAfter(contained, cleanYears),
    },
  };
}
