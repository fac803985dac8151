import type { StudyPlan } from "./draws.js";
import type { Sensitivity } from "./odds.js";
import { groupsPresent } from "./sensitivity-moves.js";
import type { RunPoints } from "./sensitivity-points.js";
import { rankCorrelations } from "./sensitivity-ranks.js";
import { tornado } from "./tornado.js";

/** Inputs that get a bar, groups not counted. */
const mostBars = 40;

/**
 * Which inputs move the net benefit of the requested option: by bars and by rank.
 * @param netBenefits of the futures that were drawn, luck left out, a list for each lake in the order of the blocks
 * @param run works out points that do not depend on one another, in one batch: they may be shared out
 */
export async function sensitivityOf(
  plan: StudyPlan,
  netBenefits: ReadonlyArray<ArrayLike<number>>,
  run: RunPoints,
  most: number = mostBars,
): Promise<Sensitivity> {
  const groups = groupsPresent(plan.inputs, plan.groups);
  const { netBenefit, bars } = await tornado(plan.inputs, groups, most, run);
  return { netBenefit, tornado: bars, ranks: rankCorrelations(plan, netBenefits) };
}
