import { at } from "../../../src/lists.js";
import type { OptionNumbers } from "../../../src/model/option-numbers.js";
import { type StateProbabilities, stateProbabilities } from "../../../src/model/risk/state-probabilities.js";

/**
 * Cost of each year by the whole course of an infestation that begins for certain in a given year: the plain way to what
 * `yearlyCostsOf` tells. Expected cost: g G (1 − K(t−1) + a K(t−1)) + O N(t) + R(t) A(t) + E(t), with the chance K that
 * mussels are known, N that they are in the year, A attempts at containment, R what one costs in that year, and E what
 * the infestation costs.
 */
export function courseCosts(
  numbers: OptionNumbers,
  hazards: readonly number[],
  establishment: number,
): number[] {
  const given = hazards.map((hazard, year) =>
    year > establishment ? hazard : Number(year === establishment),
  );
  const course = stateProbabilities(given, numbers.detection);
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

function lossOf({ losses }: OptionNumbers, { unnoticed, noticed }: StateProbabilities, year: number): number {
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
