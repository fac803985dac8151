import { at, meanOf, numbersBy } from "../../lists.js";
import { isBaseline } from "../../model/compare.js";
import { futuresPerBlock, lakesPerBlock } from "../../model/futures/draw-plan.js";
import { momentsOf } from "../../model/uncertainty/running-moments.js";
import { nextStep } from "../../model/uncertainty/stop-rule.js";
import type { StudyDocument } from "../format/schema.js";
import type { DrawnFutures } from "./joined-futures.js";
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
 * @param parts of whole blocks, in their order; none before the first
 */
export function blocksToDo(
  parts: readonly DrawnFutures[],
  { requested, baseline }: ComparedOptions,
  { precision, mostFutures }: Pick<OddsSettings, "precision" | "mostFutures">,
): NextBlocks {
  const meansOf = (one: Column, less: Column) =>
    momentsOf(parts.flatMap((part) => blockMeans(part, one, less)));
  const netBenefits = meansOf([baseline, "expected"], [requested, "expected"]);
  const losses = meansOf([baseline, "expected"], [baseline, "program"]);
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

/** Figures of an option, by its place. */
type Column = readonly [option: number, figure: "expected" | "program"];

/** Mean of one column less that of another, block by block. */
function blockMeans({ options, annuities }: DrawnFutures, one: Column, less: Column): number[] {
  const blocks = annuities.length / lakesPerBlock;
  const meanIn = ([option, figure]: Column, block: number) => {
    const all = at(options, option)[figure];
    return meanOf([...all.subarray((block * all.length) / blocks, ((block + 1) * all.length) / blocks)]);
  };
  return numbersBy(blocks, (block) => meanIn(one, block) - meanIn(less, block));
}
