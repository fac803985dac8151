import { at, meanOf, numbersBy } from "../../lists.js";
import {
  clusteredMean,
  clusteredQuantiles,
  clusteredShare,
  type QuantileEstimate,
} from "../../model/futures/clusters.js";
import { ratioWithout } from "../../model/money/account.js";
import { exceedanceCurve } from "../../model/uncertainty/exceedance.js";
import { sampleQuantiles } from "../../model/uncertainty/sample-quantile.js";
import type { JoinedFutures } from "./joined-futures.js";
import {
  type CostQuantile,
  type FanYear,
  type OddsAgainst,
  type OptionOdds,
  quantileShares,
} from "./odds.js";
import { avoidedByAccount, withOtherLosses } from "./option-accounts.js";

/** Of all intervals. */
export const confidence = 0.95;
/** Steps of the curve of chances to exceed a cost. */
const exceedanceSteps = 100;

/**
 * What the futures say of an option's costs; budget and regret beside. Means rest on what is expected in each future,
 * with luck left out, which has the same mean as what comes out and a smaller error.
 * @param baseline absent for the option that does nothing
 * @param blocks of draws, each a sample of its own with as many futures: errors are those of their means
 */
export function oddsOfOption(
  own: JoinedFutures,
  baseline: JoinedFutures | undefined,
  { blocks, startYear, horizon }: { blocks: number; startYear: number; horizon: number },
): Omit<OptionOdds, "id" | "name" | "budget" | "regret" | "cleanProgram" | "found"> {
  return {
    meanCost: clusteredMean(own.expected, blocks),
    programCost: clusteredMean(own.program, blocks),
    cost: costQuantiles(own.cost, blocks),
    everInfested: clusteredShare(own.everInfested, blocks, confidence),
    infestedAtEnd: clusteredShare(own.infestedAtEnd, blocks, confidence),
    establishedBy: meansByYear(own.establishedBy, horizon),
    against: baseline && inBothAccounts(own, baseline, blocks),
    fan: fanOf(own.byYear, horizon, startYear),
    exceedance: exceedanceCurve(own.cost, exceedanceSteps).map(({ value, chance }) => ({
      cost: value,
      chance,
    })),
  };
}

function inBothAccounts(
  option: JoinedFutures,
  baseline: JoinedFutures,
  blocks: number,
): OptionOdds["against"] {
  const alone = oddsAgainst(option, baseline, blocks);
  const [before, after] = [baseline, option].map(withOtherLosses);
  const { value: avoidedLoss } = alone.avoidedLoss;
  const avoided = avoidedByAccount(option, baseline, { blocks, avoidedLoss });
  const without = (part: number) => ratioWithout(avoidedLoss, part, alone.addedCost.value);
  return {
    ...alone,
    avoided,
    ratioWithout: { duty: without(avoided.duty), policy: without(avoided.policy) },
    withOther: before || after ? oddsAgainst(after ?? option, before ?? baseline, blocks) : undefined,
  };
}

/** Both options in the same futures, one by one. */
function oddsAgainst(
  option: Pick<JoinedFutures, "expected" | "cost" | "program">,
  baseline: Pick<JoinedFutures, "expected" | "cost" | "program">,
  blocks: number,
): OddsAgainst {
  const realised = option.cost.map((cost, future) => at(baseline.cost, future) - cost);
  const onAverage = option.expected.map((cost, future) => at(baseline.expected, future) - cost);
  const added = option.program.map((cost, future) => cost - at(baseline.program, future));
  const avoided = onAverage.map((benefit, future) => benefit + at(added, future));
  const addedCost = clusteredMean(added, blocks);
  const avoidedLoss = clusteredMean(avoided, blocks);
  const positive = (values: Float64Array) => values.map((value) => Number(value > 0));
  return {
    cheaper: clusteredShare(positive(realised), blocks, confidence),
    worthIt: clusteredShare(positive(onAverage), blocks, confidence),
    netBenefit: clusteredMean(onAverage, blocks),
    addedCost,
    avoidedLoss,
    benefitCostRatio: addedCost.value > 0 ? avoidedLoss.value / addedCost.value : undefined,
    netBenefits: costQuantiles(realised, blocks),
  };
}

const costQuantiles = (values: Float64Array, blocks: number): CostQuantile[] =>
  clusteredQuantiles(values, blocks, quantileShares, confidence).map((found, index) => ({
    share: at(quantileShares, index),
    ...found,
  }));

/**
 * Equal yearly amount over the horizon whose present value covers the cost in a share of the futures: present cost over
 * the present value of 1 in each year, A = X / Σ v(t), and its quantile.
 * @param annuities Σ v(t) of each draw of the lake
 */
export function yearlyBudget(
  { cost }: Pick<JoinedFutures, "cost">,
  { annuities, blocks }: { annuities: ArrayLike<number>; blocks: number },
  share: number,
): QuantileEstimate {
  const futures = cost.length / annuities.length;
  const yearly = cost.map((amount, future) => amount / at(annuities, Math.floor(future / futures)));
  return at(clusteredQuantiles(yearly, blocks, [share], confidence), 0);
}

/** @param chances of each year of each draw of the lake, which has as many futures as any */
function meansByYear(chances: Float64Array, horizon: number): number[] {
  const lakes = chances.length / horizon;
  return numbersBy(horizon, (year) => meanOf(numbersBy(lakes, (lake) => at(chances, lake * horizon + year))));
}

function fanOf(byYear: Float64Array, horizon: number, startYear: number): FanYear[] {
  const futures = Array.from({ length: byYear.length / horizon }, (_, future) => future);
  return Array.from({ length: horizon }, (_, year) => {
    const costs = futures.map((future) => at(byYear, future * horizon + year));
    const [p10 = 0, p50 = 0, p90 = 0] = sampleQuantiles(costs, [0.1, 0.5, 0.9]);
    return { year: startYear + year, mean: meanOf(costs), p10, p50, p90 };
  });
}
