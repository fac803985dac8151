import { at, meanOf } from "../../lists.js";
import { clusteredMean, clusteredShare } from "../../model/futures/clusters.js";
import type { FoundTimes } from "../../model/risk/course.js";
import { sampleQuantiles } from "../../model/uncertainty/sample-quantile.js";
import type { JoinedFutures } from "./joined-futures.js";
import type { FoundAmount, FoundOdds } from "./odds.js";

/** Limits of 80 % of the futures. */
const limits = [0.1, 0.9] as const;

/** Luck left out, and as it comes out: of one phase, or of several together. */
interface Amounts {
  readonly expected: Float64Array;
  readonly cost: Float64Array;
}

/**
 * What an option's futures say of the phases; absent where the study has none.
 * @param isCounted of each phase, whether the comparison has it
 */
export function foundOdds(
  { found }: Pick<JoinedFutures, "found">,
  { blocks, confidence, isCounted }: { blocks: number; confidence: number; isCounted: readonly boolean[] },
): FoundOdds | undefined {
  if (!found) return undefined;
  const { times, isFound } = found;
  const futures = isFound.length;
  const phases = found.expected.map(
    (expected, phase): Amounts => ({ expected, cost: at(found.cost, phase) }),
  );
  const amount = ({ expected, cost }: Amounts): FoundAmount => {
    const [low = 0, high = 0] = sampleQuantiles(cost, limits);
    return { mean: clusteredMean(expected, blocks), low, high };
  };
  const of = (counted: boolean) => phases.filter((_, phase) => at(isCounted, phase) === counted);
  const meanTimes = (key: keyof FoundTimes) => meanOf([...times[key]]);
  return {
    phases: phases.map(amount),
    counted: amount(together(of(true), futures)),
    beside: amount(together(of(false), futures)),
    all: amount(together(phases, futures)),
    times: {
      found: meanTimes("found"),
      tried: meanTimes("tried"),
      contained: meanTimes("contained"),
      returned: meanTimes("returned"),
    },
    isFound: clusteredShare(isFound, blocks, confidence),
  };
}

function together(phases: readonly Amounts[], futures: number): Amounts {
  const sum = { expected: new Float64Array(futures), cost: new Float64Array(futures) };
  for (const { expected, cost } of phases) {
    for (let future = 0; future < futures; future++) {
      sum.expected[future] = at(sum.expected, future) + at(expected, future);
      sum.cost[future] = at(sum.cost, future) + at(cost, future);
    }
  }
  return sum;
}
