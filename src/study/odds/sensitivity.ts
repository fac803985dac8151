import type { StudyPlan } from "./draws.js";
import { hydrologicYearId, type Sensitivity } from "./odds.js";
import { groupsPresent } from "./sensitivity-moves.js";
import type { RunPoints } from "./sensitivity-points.js";
import { tornado } from "./tornado.js";
import { typicalShareOf } from "./typical-share.js";

/** Inputs that get a bar, groups not counted. */
const mostBars = 24;

/**
 * Which inputs move the net benefit of the requested option: by rank over the futures that were drawn, and by bars of those
 * that move it most by rank. Only bars ask for lakes of their own.
 * @param ranks of all inputs, strongest first
 * @param run works out points that do not depend on one another, in one batch: they may be shared out
 */
export async function sensitivityOf(
  plan: StudyPlan,
  ranks: Sensitivity["ranks"],
  run: RunPoints,
  most: number = mostBars,
): Promise<Sensitivity> {
  const first = new Set(ranks.slice(0, most).map(({ id }) => id));
  const chosen = plan.inputs.filter(({ id }) => first.has(id) || id === hydrologicYearId);
  const { netBenefit, bars } = await tornado(chosen, groupsPresent(plan.inputs, plan.groups), run);
  const typicalShare = typicalShareOf(plan, ranks);
  return { netBenefit, tornado: bars, ranks, ...(typicalShare === undefined ? {} : { typicalShare }) };
}
