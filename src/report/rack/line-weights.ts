import { at } from "../../lists.js";
import { isControl } from "../../model/infestation-cost.js";
import type { CostLine } from "../../model/money/line.js";
import { priceGroupOf } from "../../model/money/price-group.js";
import { type CostWeights, weightsOf } from "../../model/present-value.js";
import type { ReportContext } from "../document/context.js";

/** What a line weighs in the present value in each year of an infestation: losses count before it is noticed too. */
export function lineWeights(line: CostLine, weights: CostWeights): readonly number[] {
  const { unnoticed, noticed } = weightsOf(priceGroupOf(line), weights);
  return isControl(line) ? noticed : noticed.map((weight, age) => weight + at(unnoticed, age));
}

/** Author's own losses that are not infrastructure are in no total. */
export const isCounted = (line: CostLine) => line.type !== "apart";

/** Every line of every year of the horizon under the lake's own levels; `age` counts from 0. */
export function countedLines({ comparison }: ReportContext) {
  const { weights } = comparison.baseline;
  return comparison.structures.flatMap(({ structure, years }) =>
    years
      .slice(-weights.noticed.length)
      .flatMap((lines, age) =>
        lines.filter(isCounted).map((line) => ({ structureName: structure.name, line, age })),
      ),
  );
}
