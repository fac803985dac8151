import { at, meanOf } from "../../lists.js";
import { isBaseline } from "../../model/compare.js";
import { futuresPerBlock, lakesPerBlock } from "../../model/futures/draw-plan.js";
import { momentsOf } from "../../model/uncertainty/running-moments.js";
import { nextStep } from "../../model/uncertainty/stop-rule.js";
import type { StudyDocument } from "../format/schema.js";
import type { LakeFutures } from "./draws.js";
import type { Odds } from "./odds.js";
import { finestError, type OddsSettings, usualBlocks } from "./odds-settings.js";

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
 * Whether the requested option's mean net benefit is known well enough, by the blocks drawn so far: each is a sample of its
 * own, so that their means are independent. The answer depends on the draws alone: whoever draws, in whatever order,
 * ends at the same block.
 * @param lakes of whole blocks, in the order of blocks and lakes; none before the first
 */
export function blocksToDo(
  lakes: readonly LakeFutures[],
  { requested, baseline }: ComparedOptions,
  { precision, mostFutures }: Pick<OddsSettings, "precision" | "mostFutures">,
): NextBlocks {
  const meansOf = (ofLake: (lake: LakeFutures) => number) => blockMeans(lakes.map(ofLake));
  const netBenefits = momentsOf(
    meansOf(({ expected }) => meanOf([...at(expected, baseline)]) - meanOf([...at(expected, requested)])),
  );
  const losses = momentsOf(
    meansOf(
      ({ expected, program }) => meanOf([...at(expected, baseline)]) - meanOf([...at(program, baseline)]),
    ),
  );
  const cap = Math.floor(mostFutures / futuresPerBlock);
  const next = nextStep(netBenefits, {
    share: precision,
    error: finestError * Math.max(losses.mean, Math.abs(netBenefits.mean)),
    least: Math.min(usualBlocks, cap),
    cap,
  });
  switch (next.step) {
    case "more":
      return { blocks: next.draws };
    case "done":
      return { end: "precise" };
    case "capped":
      return { end: "cap" };
  }
}

/** Means of lakes, block by block. */
function blockMeans(lakes: readonly number[]): number[] {
  return Array.from({ length: lakes.length / lakesPerBlock }, (_, block) =>
    meanOf(lakes.slice(block * lakesPerBlock, (block + 1) * lakesPerBlock)),
  );
}
