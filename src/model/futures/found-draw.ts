import { at, numbersBy, sumOf } from "../../lists.js";
import { addByFirstYear, containedByAge, type OptionNumbers, statesSince } from "../option-numbers.js";
import {
  type FoundPayments,
  type FoundTimes,
  foundPayments,
  type PricedPhase,
  paymentsOf,
} from "../risk/course.js";
import type { Detection, StateProbabilities } from "../risk/state-probabilities.js";
import { expectedCourse, productSum } from "./expected-course.js";
import { simulatedCourse } from "./found-outcome.js";
import { establishmentYear } from "./future.js";

/** What is done once mussels are found, for one option in a lake as drawn. */
export interface FoundDraw {
  readonly detection: Detection;
  readonly cleanYears: number;
  /** What several phases are paid by, each once. */
  readonly reasons: readonly Reason[];
  readonly phases: ReadonlyArray<ReadonlyArray<{ readonly amount: number; readonly reason: number }>>;
  /** How often mussels are found, and attempts, by the year in which they establish. */
  readonly found: readonly number[];
  readonly tried: readonly number[];
  /** Chance that mussels are contained in the first, second, … year since. */
  readonly contained: readonly number[];
}

/** When parts of phases are paid, and what each payment of 1 is worth. */
interface Reason extends Pick<PricedPhase, "when">, Omit<PricedPhase["parts"][number], "amount"> {
  /** Present value of the payments of 1 by the year in which mussels establish. */
  readonly byStart: readonly number[];
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
  const payments = foundPayments(statesByYear, { success, cleanYears });
  const once = numbersBy(numbers.factors.length, () => 1);
  const reasons: Reason[] = [];
  const reasonOf = ({ when, fromAge, inYear }: Omit<Reason, "byStart">): number => {
    const known = reasons.findIndex(
      (each) => each.when === when && each.fromAge === fromAge && each.inYear === inYear,
    );
    if (known >= 0) return known;
    const byStart = worthByStart({ when, fromAge, inYear }, payments);
    return reasons.push({ when, fromAge, inYear, byStart }) - 1;
  };
  return {
    detection: numbers.detection,
    cleanYears,
    reasons,
    phases: phases.map(({ when, parts }) =>
      parts.map(({ amount, fromAge, inYear }) => ({ amount, reason: reasonOf({ when, fromAge, inYear }) })),
    ),
    found: worthByStart({ when: "found", fromAge: 0, inYear: once }, payments),
    tried: worthByStart({ when: "tried", fromAge: 0, inYear: once }, payments),
    contained: containedByAge(statesByYear, numbers.detection),
  };
}

function worthByStart({ when, fromAge, inYear }: Omit<Reason, "byStart">, payments: FoundPayments): number[] {
  const worths = numbersBy(inYear.length, () => 0);
  const paid = paymentsOf(payments, when, fromAge);
  if (paid.some((times) => times > 0)) addByFirstYear(worths, paid, inYear);
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
  const { reasons, phases, cleanYears, detection } = draw;
  const { begins, ever } = expectedCourse(hazards, draw.contained);
  const expected = reasons.map(({ byStart }) => productSum(byStart, begins));
  const payments = simulatedPayments(hazards, detection, { luck, draws, cleanYears });
  const paid = reasons.map(({ when, fromAge, inYear }) =>
    payments ? productSum(paymentsOf(payments, when, fromAge), inYear) : 0,
  );
  const tried = productSum(draw.tried, begins);
  return {
    expected: phases.map((parts) => paidFor(parts, expected)),
    cost: phases.map((parts) => paidFor(parts, paid)),
    times: {
      found: productSum(draw.found, begins),
      tried,
      contained: tried * (detection.containment?.success ?? 0),
      returned: detection.containment ? Math.max(0, sumOf(begins) - ever) : 0,
    },
    isFound: payments !== undefined,
  };
}

/** Of a future as it comes out; none where mussels are never found. */
function simulatedPayments(...[hazards, detection, luck]: Parameters<typeof simulatedCourse>) {
  if (establishmentYear(hazards, luck.luck) === hazards.length) return undefined;
  const { times, payments } = simulatedCourse(hazards, detection, luck);
  return times.found > 0 ? payments : undefined;
}

function paidFor(parts: FoundDraw["phases"][number], worths: readonly number[]): number {
  let sum = 0;
  for (const { amount, reason } of parts) sum += amount * at(worths, reason);
  return sum;
}
