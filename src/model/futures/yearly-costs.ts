import { at, noElement } from "../../lists.js";
import { containedByAge, type OptionNumbers, statesSince } from "../option-numbers.js";
import type { StateProbabilities } from "../risk/state-probabilities.js";

/** Cost of each year of the horizon in one future. @param establishment year counted from 0; the horizon's length for none */
type YearlyCosts = (hazards: readonly number[], establishment: number) => Float64Array;

/**
 * Cost of each year of the horizon, undiscounted, in futures in which mussels establish in a given year e; what a
 * containment leads to is taken at its expectation. Discounted and added up it is the `cost` of `optionFuture`.
 * An infestation begins in year s with chance f(s): 1 in year e, h(s) c(s) after it, with the chance c that the lake is
 * clean when the year begins, c(s+1) = (1−h(s)) c(s) + Σ q(a) f(s+1−a); q(a) is the chance to be contained in its year a.
 * Cost(t) = g(t) + Σ f(s) E(t,s): the program of a clean lake, and what an infestation begun in year s adds in year t.
 */
export function yearlyCostsOf(
  numbers: OptionNumbers,
  statesByYear: readonly StateProbabilities[] = statesSince(numbers),
): YearlyCosts {
  const years = numbers.factors.length;
  const clean = cleanCosts(numbers);
  const added = addedCosts(numbers, statesByYear);
  const contained = containedByAge(statesByYear, numbers.detection);
  return (hazards, establishment) => {
    const costs = clean.slice();
    const begins = beginnings(hazards, establishment, contained);
    for (let first = establishment; first < years; first++) {
      const chance = begins[first] ?? 0;
      if (chance === 0) continue;
      for (let year = first; year < years; year++) {
        costs[year] = (costs[year] ?? 0) + chance * (added[first * years + year] ?? 0);
      }
    }
    return costs;
  };
}

function cleanCosts({ factors, programInYear, knownAtStart, keptShare }: OptionNumbers): Float64Array {
  return Float64Array.from(factors, (_, year) =>
    year === 0 && knownAtStart ? at(programInYear, year) * keptShare : at(programInYear, year),
  );
}

/** E: what an infestation begun in a year adds to each later one, row after row by the year in which it begins. */
function addedCosts(
  { programInYear, keptShare, scheduleInYear, attemptInYear, losses }: OptionNumbers,
  statesByYear: readonly StateProbabilities[],
): Float64Array {
  const years = statesByYear.length;
  const added = new Float64Array(years * years);
  statesByYear.forEach((during, age) => {
    const noticed = at(during.noticed, 0);
    const left = (1 - keptShare) * (statesByYear[age - 1]?.known ?? 0);
    const lost = losses.map((stream) => ({
      share: stream.share,
      amount: at(stream.unnoticed, age) * at(during.unnoticed, 0) + at(stream.noticed, age) * noticed,
    }));
    for (let year = age; year < years; year++) {
      let cost =
        (scheduleInYear[year] ?? noElement(scheduleInYear, year)) * noticed +
        (attemptInYear[year] ?? noElement(attemptInYear, year)) * during.attempts -
        (programInYear[year] ?? noElement(programInYear, year)) * left;
      for (const { share, amount } of lost)
        cost += (share ? (share[year] ?? noElement(share, year)) : 1) * amount;
      added[(year - age) * years + year] = cost;
    }
  });
  return added;
}

/** f: the chance that an infestation begins in each year. */
function beginnings(
  hazards: readonly number[],
  establishment: number,
  contained: readonly number[],
): Float64Array {
  const begins = new Float64Array(hazards.length);
  // Past the end, where mussels never establish, the array takes nothing.
  begins[establishment] = 1;
  let clean = 0;
  for (let year = establishment; contained.length > 0 && year < hazards.length; year++) {
    const hazard = at(hazards, year);
    if (year > establishment) {
      begins[year] = hazard * clean;
      clean *= 1 - hazard;
    }
    const ages = Math.min(contained.length, year - establishment + 1);
    for (let age = 0; age < ages; age++) clean += at(contained, age) * (begins[year - age] ?? 0);
  }
  return begins;
}
