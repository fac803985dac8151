import { at, sumOf } from "../../lists.js";
import type { MoneySettings, ProgramOption, Response } from "../inputs.js";
import { type Bearer, centsByBearer } from "../money/bearer.js";
import { Money, noMoney } from "../money/decimal.js";
import { type CostLine, costLine } from "../money/line.js";
import { inEachYear, type Rises } from "../money/price-rises.js";
import { weightedTotal } from "../risk/expectation.js";
import type { StateProbabilities } from "../risk/state-probabilities.js";

/** What an option's attempts to be rid of mussels are expected to cost and to achieve over the horizon. */
export interface Containment {
  /** One attempt. */
  readonly line: CostLine;
  /** Expected attempts, and those of them that succeed. */
  readonly attempts: number;
  readonly successes: number;
  /** Plain money. */
  readonly expectedByYear: readonly number[];
  readonly presentValue: Money;
  readonly undiscounted: Money;
  readonly byBearer: ReadonlyArray<{ readonly id: string; readonly presentValue: Money }>;
}

/**
 * Expected cost of containment in year t, Q(t) = R A(t): the cost R of one attempt times the expected number A of
 * attempts, with the rise of its price. An attempt costs the same whether it succeeds or not. Absent where the option states no response.
 */
export function containmentOf(
  { response, id }: ProgramOption,
  { programBearer }: Pick<MoneySettings, "programBearer">,
  statesByYear: readonly StateProbabilities[],
  { factors, rises }: { readonly factors: readonly number[]; readonly rises: Rises },
): Containment | undefined {
  if (response === undefined) return undefined;
  const line = attemptLine(response, id, programBearer);
  const inYear = inEachYear([line], factors.length, rises);
  const expectedByYear = statesByYear.map(({ attempts }, year) => at(inYear, year) * attempts);
  const attempts = statesByYear.reduce((sum, year) => sum + year.attempts, 0);
  const presentValue = new Money(weightedTotal(expectedByYear, factors));
  return {
    line,
    attempts,
    successes: attempts * response.chance,
    expectedByYear,
    presentValue,
    undiscounted: new Money(sumOf(expectedByYear)),
    byBearer: centsByBearer(line.bearer, line.cents).map(([bearer, cents]) => ({
      id: bearer,
      presentValue: line.cents === 0 ? noMoney : presentValue.times(cents).dividedBy(line.cents),
    })),
  };
}

function attemptLine(response: Response, option: string, programBearer: Bearer): CostLine {
  return costLine({
    structure: option,
    what: response.name,
    type: "work",
    bearer: response.bearer ?? programBearer,
    quantity: 1,
    quantityKind: "each",
    unitRate: response.cost,
    assumptionIds: [],
  });
}

/** Cost of one attempt in each year of the horizon, in plain money; nothing where none is tried. */
export function attemptInYear(
  { response, id }: ProgramOption,
  horizon: number,
  rises: Rises,
): readonly number[] {
  if (response === undefined) return Array<number>(horizon).fill(0);
  return inEachYear([attemptLine(response, id, id)], horizon, rises);
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
