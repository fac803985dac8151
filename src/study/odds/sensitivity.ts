import type { StudyPlan } from "./draws.js";
import type { Matters } from "./odds.js";
import { groupsPresent } from "./sensitivity-moves.js";
import type { RunPoints } from "./sensitivity-points.js";
import { rankCorrelations } from "./sensitivity-ranks.js";
import { strongestFactors, varianceShares } from "./sensitivity-shares.js";
import { tornado } from "./tornado.js";

export interface MattersSettings {
  /** Inputs that get a bar, groups not counted. */
  readonly bars: number;
  /** Factors whose shares of the variance are told, all others together counted. */
  readonly factors: number;
  /** Draws of each of the two samples behind the shares. */
  readonly draws: number;
  /** Bootstrap samples behind the standard errors of the shares. */
  readonly resamples: number;
}

export const mattersSettings: MattersSettings = { bars: 40, factors: 6, draws: 64, resamples: 200 };

/**
 * Which inputs move the net benefit of the requested option: by bars, by rank and by share of the variance.
 * @param netBenefits of the futures that were drawn, luck left out, a list for each lake in the order of the blocks
 * @param run works out points that do not depend on one another, in two batches: those of one may be shared out
 */
export async function matters(
  plan: StudyPlan,
  netBenefits: ReadonlyArray<ArrayLike<number>>,
  run: RunPoints,
  settings: MattersSettings = mattersSettings,
): Promise<Matters> {
  const { inputs, seed } = plan;
  const groups = groupsPresent(inputs, plan.groups);
  const { netBenefit, bars } = await tornado(inputs, groups, settings.bars, run);
  const factors = strongestFactors(bars, inputs, groups, settings.factors);
  const shares = { seed, count: settings.draws, resamples: settings.resamples };
  return {
    netBenefit,
    tornado: bars,
    ranks: rankCorrelations(plan, netBenefits),
    shares: await varianceShares(factors, plan, shares, run),
  };
}
