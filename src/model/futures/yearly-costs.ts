import { at } from "../lake/calendar.js";
import type { OptionNumbers } from "../option-numbers.js";
import { type CourseYear, followCourse } from "../risk/course.js";

/**
 * Cost of each year of the horizon, undiscounted, in the future in which mussels establish in a given year; what a
 * containment leads to is taken at its expectation. Discounted and added up it is the `cost` of `optionFuture`.
 * @param hazards chance of establishment in year 1, 2, …: it counts again after that year once the lake is contained
 * @param establishment year counted from 0; as many as the horizon has if mussels do not establish
 */
export function yearlyCosts(
  numbers: OptionNumbers,
  hazards: readonly number[],
  establishment: number,
): number[] {
  const given = hazards.map((hazard, year) =>
    year > establishment ? hazard : Number(year === establishment),
  );
  return costsOfCourse(numbers, followCourse(given, numbers.noticing));
}

/** `yearlyCosts` of one option for many futures: what no later hazard can change is followed once for each year. */
export function yearlyCostsOf(
  numbers: OptionNumbers,
): (hazards: readonly number[], establishment: number) => readonly number[] {
  const known = new Map<number, readonly number[]>();
  return (hazards, establishment) => {
    const isCertain = numbers.noticing.containment === undefined || establishment === hazards.length;
    const found = known.get(establishment) ?? yearlyCosts(numbers, hazards, establishment);
    if (isCertain) known.set(establishment, found);
    return found;
  };
}

/**
 * Expected cost of each year, undiscounted: g G (1 − K(t−1) + a K(t−1)) + O N(t) + R(t) A(t) + E(t), with the chance K
 * that mussels are known, N that they are in the year, A attempts at containment, R what one costs in that year, and E
 * what the infestation costs.
 */
function costsOfCourse(numbers: OptionNumbers, course: readonly CourseYear[]): number[] {
  return course.map((during, year) => {
    const knownBefore = course[year - 1]?.known ?? Number(numbers.knownAtStart);
    const known = during.noticed.reduce((sum, chance) => sum + chance, 0);
    return (
      at(numbers.programInYear, year) * (1 - knownBefore + knownBefore * numbers.keptShare) +
      at(numbers.scheduleInYear, year) * known +
      during.attempts * at(numbers.attemptInYear, year) +
      lossOf(numbers, during, year)
    );
  });
}

function lossOf({ losses }: OptionNumbers, { unnoticed, noticed }: CourseYear, year: number): number {
  let loss = 0;
  for (const stream of losses) {
    const share = stream.share ? at(stream.share, year) : 1;
    for (let since = 0; since <= year; since++) {
      const age = year - since;
      loss +=
        share *
        (at(stream.unnoticed, age) * at(unnoticed, since) + at(stream.noticed, age) * at(noticed, since));
    }
  }
  return loss;
}
