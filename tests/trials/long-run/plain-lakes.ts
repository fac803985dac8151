import type { AssumptionSet } from "#product/assumptions/entry.js";
import { at, meanOf } from "#product/lists.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { drawnStudy } from "#product/study/odds/draws.js";
import { comparedOptions } from "#product/study/odds/stop-drawing.js";

/** What the few futures of one lake say of the requested option and of none. */
export interface LakeFigures {
  readonly netBenefit: number;
  /** What an infestation is expected to cost without a program. */
  readonly loss: number;
  /** Shares of the futures. */
  readonly cheaper: number;
  readonly worthIt: number;
  readonly everInfested: number;
  /** Cost without a program in each future, as it comes out. */
  readonly costs: readonly number[];
}

/** Lakes that are independent of one another: the first of a block each, by a seed that no estimate uses. */
export function plainLakes(
  document: StudyDocument,
  assumptions: AssumptionSet,
  { seed, first, count }: { readonly seed: number; readonly first: number; readonly count: number },
): LakeFigures[] {
  const drawn = drawnStudy(document, assumptions, { seed, sampling: "latin-hypercube" });
  const { requested, baseline } = comparedOptions(document);
  return Array.from({ length: count }, (_, lake) => {
    const { expected, cost, program, everInfested } = drawn.futures(1 + first + lake, 0);
    const [none, own] = [[...at(expected, baseline)], [...at(expected, requested)]];
    const costs = [...at(cost, baseline)];
    return {
      netBenefit: meanOf(none) - meanOf(own),
      loss: meanOf(none) - meanOf([...at(program, baseline)]),
      cheaper: meanOf(costs.map((each, future) => Number(each > at(at(cost, requested), future)))),
      worthIt: meanOf(none.map((each, future) => Number(each > at(own, future)))),
      everInfested: meanOf([...at(everInfested, baseline)]),
      costs,
    };
  });
}
