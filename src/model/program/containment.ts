import type { MoneySettings, ProgramOption } from "../inputs.js";
import { centsByBearer } from "../money/bearer.js";
import { amountOf, type CostLine, costLine, type Money, moneyOf, noMoney, sumOf } from "../money/line.js";
import type { CourseYear } from "../risk/course.js";
import { weightedSum } from "../risk/expectation.js";

/** What an option's attempts to be rid of mussels are expected to cost and to achieve over the horizon. */
export interface Containment {
  /** One attempt. */
  readonly line: CostLine;
  /** Expected attempts, and those of them that succeed. */
  readonly attempts: number;
  readonly successes: number;
  readonly expectedByYear: readonly Money[];
  readonly presentValue: Money;
  readonly undiscounted: Money;
  readonly byBearer: ReadonlyArray<{ readonly id: string; readonly presentValue: Money }>;
}

/**
 * Expected cost of containment in year t, Q(t) = R A(t): the cost R of one attempt times the expected number A of
 * attempts. An attempt costs the same whether it succeeds or not. Absent where the option states no response.
 */
export function containmentOf(
  { response, id }: ProgramOption,
  { programBearer }: Pick<MoneySettings, "programBearer">,
  course: readonly CourseYear[],
  factors: readonly number[],
): Containment | undefined {
  if (response === undefined) return undefined;
  const line = costLine({
    structure: id,
    what: response.name,
    type: "work",
    bearer: response.bearer ?? programBearer,
    quantity: 1,
    quantityKind: "each",
    unitRate: response.cost,
    assumptionIds: [],
  });
  const expectedByYear = course.map(({ attempts }) => amountOf(line).times(attempts));
  const attempts = course.reduce((sum, year) => sum + year.attempts, 0);
  const weight = course.reduce((sum, year, index) => sum + year.attempts * (factors[index] ?? 0), 0);
  return {
    line,
    attempts,
    successes: attempts * response.chance,
    expectedByYear,
    presentValue: weightedSum(expectedByYear, factors),
    undiscounted: sumOf(expectedByYear),
    byBearer: centsByBearer(line.bearer, line.cents).map(([bearer, cents]) => ({
      id: bearer,
      presentValue: moneyOf(cents).times(weight),
    })),
  };
}

/** Present values by bearer with those of containment added; a bearer that pays for nothing else comes last. */
export function withContainment(
  byBearer: Containment["byBearer"],
  containment: Containment | undefined,
): Containment["byBearer"] {
  if (containment === undefined) return byBearer;
  const added = new Map(containment.byBearer.map(({ id, presentValue }) => [id, presentValue]));
  const known = new Set(byBearer.map(({ id }) => id));
  return [
    ...byBearer.map(({ id, presentValue }) => ({
      id,
      presentValue: presentValue.plus(added.get(id) ?? noMoney),
    })),
    ...containment.byBearer.filter(({ id }) => !known.has(id)),
  ];
}
