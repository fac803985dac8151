import { at, meanOf } from "../../lists.js";
import { isBaseline } from "../../model/compare.js";
import { futuresPerBlock, lakesPerBlock } from "../../model/futures/draw-plan.js";
import { momentsOf } from "../../model/uncertainty/running-moments.js";
import { nextStep } from "../../model/uncertainty/stop-rule.js";
import type { StudyDocument } from "../format/schema.js";
import type { LakeFutures } from "./draws.js";
import type { Odds } from "./odds.js";
import { leastBlocks, type OddsSettings } from "./odds-settings.js";

/** Places of the requested option and of the one that does nothing, in the order of the options. */
export interface ComparedOptions {
  readonly requested: number;
  readonly baseline: number;
}

export const comparedOptions = ({ study, options }: StudyDocument): ComparedOptions => ({
  requested: options.findIndex(({ id }) => id === study.requestedOption),
  baseline: options.findIndex(isBaseline),
});

/** What to do after the blocks so far: more blocks, or nothing more for a reason. */
type NextBlocks = { readonly blocks: number } | { readonly end: Odds["end"] };

/**
 * Whether the requested option's mean net benefit is known well enough, by the lakes drawn so far. Their net benefits on
 * average over luck count as independent draws; those of a block are more even than that, so that the error is rather
 * too large. The answer depends on the draws alone: whoever draws, in whatever order, ends at the same block.
 * @param lakes of whole blocks, in the order of blocks and lakes; none before the first
 */
export function blocksToDo(
  lakes: readonly LakeFutures[],
  { requested, baseline }: ComparedOptions,
  { precision, mostFutures }: Pick<OddsSettings, "precision" | "mostFutures">,
): NextBlocks {
  const netBenefits = lakes.map(
    ({ expected }) => meanOf([...at(expected, baseline)]) - meanOf([...at(expected, requested)]),
  );
  const next = nextStep(momentsOf(netBenefits), {
    share: precision,
    least: leastBlocks * lakesPerBlock,
    cap: Math.floor(mostFutures / futuresPerBlock) * lakesPerBlock,
  });
  switch (next.step) {
    case "more":
      return { blocks: Math.ceil(next.draws / lakesPerBlock) };
    case "done":
      return { end: "precise" };
    case "capped":
      return { end: "cap" };
  }
}
