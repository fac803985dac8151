import { at } from "../../lists.js";
import { isControl } from "../../model/infestation-cost.js";
import { type Money, noMoney } from "../../model/money/decimal.js";
import { amountOf, type CostLine, sumOf } from "../../model/money/line.js";
import { priceGroupOf } from "../../model/money/price-group.js";
import { type CostWeights, weightsOf } from "../../model/present-value.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { MatureYears } from "../levels/mature-years.js";

/** A structure's cost lines of one name over the horizon. */
export interface NamedLine {
  /** The first that occurs. */
  readonly sample: CostLine;
  /** That of the mature year, if it occurs then, with its amount. */
  readonly mature: { readonly line: CostLine; readonly amount: Money } | undefined;
  readonly presentValue: Money;
}

/** Author's own losses that are not infrastructure are in no total. */
export const isCounted = (line: CostLine) => line.type !== "apart";

/** Lines of the years of the horizon; those before lie before the study. */
const yearsOf = ({ years }: StructureResult, weights: CostWeights) => years.slice(-weights.noticed.length);

/** What a line weighs in the present value in each year of an infestation: losses count before it is noticed too. */
function lineWeights(line: CostLine, weights: CostWeights): readonly number[] {
  const { unnoticed, noticed } = weightsOf(priceGroupOf(line), weights);
  return isControl(line) ? noticed : noticed.map((weight, age) => weight + at(unnoticed, age));
}

export function namedLines(
  result: StructureResult,
  weights: CostWeights,
  { year }: MatureYears,
): NamedLine[] {
  const years = yearsOf(result, weights);
  const names = new Set(years.flatMap((lines) => lines.filter(isCounted).map(({ what }) => what)));
  return [...names].flatMap((name) => {
    const occurrences = years.map((lines) => lines.find(({ what }) => what === name));
    const sample = occurrences.find((line) => line !== undefined);
    if (!sample) return [];
    const weighed = occurrences.map((line, age) =>
      line ? amountOf(line).times(at(lineWeights(line, weights), age)) : noMoney,
    );
    const line = occurrences[year];
    const mature = line && { line, amount: amountOf(line) };
    return [{ sample, mature, presentValue: sumOf(weighed) }];
  });
}
