import { at, noElement } from "../../lists.js";
import {
  type CostByEstablishment,
  containedByAge,
  costToGo,
  type OptionNumbers,
  statesSince,
} from "../option-numbers.js";
import {
  type FoundCourse,
  type FoundTimes,
  foundCourse,
  type PricedPhase,
  paymentsOf,
  phaseWorth,
} from "../risk/course.js";
import type { StateProbabilities } from "../risk/state-probabilities.js";
import { simulatedCourse } from "./found-outcome.js";

/** What is done once mussels are found, for one option in a lake as drawn. */
export interface FoundDraw {
  readonly numbers: OptionNumbers;
  readonly cleanYears: number;
  readonly phases: readonly PricedPhase[];
  /** The phases by the year in which mussels establish, and the times that they are found and that an attempt is made. */
  readonly costs: readonly CostByEstablishment[];
  readonly found: CostByEstablishment;
  readonly tried: CostByEstablishment;
  readonly established: CostByEstablishment;
  /** Room in which `foundFuture` reckons. */
  readonly work: Float64Array;
}

/** An option in a future. */
export interface FoundFuture {
  /** Present cost of each phase with luck left out, and with the luck of years, finds and attempts. */
  readonly expected: readonly number[];
  readonly cost: readonly number[];
  /** Luck left out. */
  readonly times: FoundTimes;
  readonly isFound: boolean;
}

export function foundDraw(
  numbers: OptionNumbers,
  phases: readonly PricedPhase[],
  cleanYears: number,
  statesByYear: readonly StateProbabilities[] = statesSince(numbers),
): FoundDraw {
  const success = numbers.detection.containment?.success ?? 0;
  const course = foundCourse(statesByYear, { success, cleanYears });
  const contained = containedByAge(statesByYear, numbers.detection);
  const none = numbers.factors.map(() => 0);
  const once = numbers.factors.map(() => 1);
  const from = (phase: PricedPhase): CostByEstablishment => ({
    clean: none,
    established: worthByStart(phase, course),
    contained,
  });
  const times = (when: "found" | "tried") => from({ when, parts: [{ amount: 1, fromAge: 0, inYear: once }] });
  return {
    numbers,
    cleanYears,
    phases,
    costs: phases.map(from),
    found: times("found"),
    tried: times("tried"),
    established: { clean: none, established: once, contained },
    work: new Float64Array(none.length + 1),
  };
}

/** Present value of the payments of an infestation that establishes in each year of the horizon, until it is contained. */
function worthByStart({ when, parts }: PricedPhase, { payments }: FoundCourse): number[] {
  const worths = payments.found.map(() => 0);
  for (const { amount, fromAge, inYear } of parts) {
    const paid = paymentsOf(payments, when, fromAge);
    for (let first = 0; first < worths.length; first++) {
      worths[first] = at(worths, first) + amount * worthFrom(first, paid, inYear);
    }
  }
  return worths;
}

function worthFrom(first: number, paid: readonly number[], inYear: readonly number[]): number {
  let sum = 0;
  for (let year = first; year < inYear.length; year++) {
    const age = year - first;
    sum += (paid[age] ?? noElement(paid, age)) * (inYear[year] ?? noElement(inYear, year));
  }
  return sum;
}

/**
 * @param luck that of the year of establishment, as of the option's costs
 * @param draws uniform, three for each year of the horizon and the same for all options
 */
export function foundFuture(
  draw: FoundDraw,
  hazards: readonly number[],
  { luck, draws }: { readonly luck: number; readonly draws: readonly number[] },
): FoundFuture {
  const { numbers, cleanYears, phases, costs, work } = draw;
  const expected = (amounts: CostByEstablishment) => at(costToGo(amounts, hazards, work), 0);
  const outcome = simulatedCourse(hazards, numbers.detection, { luck, draws, cleanYears });
  const isFound = outcome.times.found > 0;
  const tried = expected(draw.tried);
  const isTried = numbers.detection.containment !== undefined;
  const never = hazards.reduce((clean, hazard) => clean * (1 - hazard), 1);
  return {
    expected: costs.map(expected),
    cost: phases.map((phase) => (isFound ? phaseWorth(phase, outcome.payments) : 0)),
    times: {
      found: expected(draw.found),
      tried,
      contained: tried * (numbers.detection.containment?.success ?? 0),
      returned: isTried ? Math.max(0, expected(draw.established) - (1 - never)) : 0,
    },
    isFound,
  };
}
