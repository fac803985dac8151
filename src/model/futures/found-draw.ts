import { sumOf } from "../../lists.js";
import { addByFirstYear, containedByAge, type OptionNumbers, statesSince } from "../option-numbers.js";
import {
  type FoundCourse,
  type FoundTimes,
  foundCourse,
  type PricedPhase,
  paymentsOf,
  phaseWorth,
} from "../risk/course.js";
import type { StateProbabilities } from "../risk/state-probabilities.js";
import { expectedCourse, productSum } from "./expected-course.js";
import { simulatedCourse } from "./found-outcome.js";

/** What is done once mussels are found, for one option in a lake as drawn. */
export interface FoundDraw {
  readonly numbers: OptionNumbers;
  readonly cleanYears: number;
  readonly phases: readonly PricedPhase[];
  /** By the year in which mussels establish: what each phase costs, how often they are found, and attempts. */
  readonly costs: readonly (readonly number[])[];
  readonly found: readonly number[];
  readonly tried: readonly number[];
  /** Chance that mussels are contained in the first, second, … year since. */
  readonly contained: readonly number[];
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
  const once = numbers.factors.map(() => 1);
  const times = (when: "found" | "tried") =>
    worthByStart({ when, parts: [{ amount: 1, fromAge: 0, inYear: once }] }, course);
  return {
    numbers,
    cleanYears,
    phases,
    costs: phases.map((phase) => worthByStart(phase, course)),
    found: times("found"),
    tried: times("tried"),
    contained: containedByAge(statesByYear, numbers.detection),
  };
}

/** Present value of the payments of an infestation that establishes in each year of the horizon, until it is contained. */
function worthByStart({ when, parts }: PricedPhase, { payments }: FoundCourse): number[] {
  const worths = Array<number>(payments.found.length).fill(0);
  for (const { amount, fromAge, inYear } of parts) {
    const paid = paymentsOf(payments, when, fromAge);
    addByFirstYear(
      worths,
      paid.map((times) => amount * times),
      inYear,
    );
  }
  return worths;
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
  const { phases, costs, cleanYears } = draw;
  const { detection } = draw.numbers;
  const { begins, ever } = expectedCourse(hazards, draw.contained);
  const outcome = simulatedCourse(hazards, detection, { luck, draws, cleanYears });
  const isFound = outcome.times.found > 0;
  const tried = productSum(draw.tried, begins);
  return {
    expected: costs.map((each) => productSum(each, begins)),
    cost: phases.map((phase) => (isFound ? phaseWorth(phase, outcome.payments) : 0)),
    times: {
      found: productSum(draw.found, begins),
      tried,
      contained: tried * (detection.containment?.success ?? 0),
      returned: detection.containment ? Math.max(0, sumOf(begins) - ever) : 0,
    },
    isFound,
  };
}
