import { at } from "../../lists.js";
import {
  type BlockShares,
  blockShares,
  type DrawPlan,
  futuresPerBlock,
  valueAtShare,
} from "../../model/futures/draw-plan.js";
import { usualMostFutures } from "./odds-settings.js";

/** Draws of a block; a share is turned into a value where it is needed, by the one worker that needs it. */
export interface BlockValues {
  readonly shares: BlockShares;
  readonly of: (stage: "lake" | "chances", draw: number) => ReadonlyMap<string, number>;
}

/** Blocks whose shares are kept with their plan: as many as are drawn unless a study says otherwise. */
const mostKept = usualMostFutures / futuresPerBlock;
const kept = new WeakMap<DrawPlan, Map<number, BlockShares>>();

/** The draws of a block as shares. They are asked for by each lake of the block, and again by what is told of all lakes. */
export function sharesOf(plan: DrawPlan, block: number): BlockShares {
  const ofPlan = kept.get(plan) ?? new Map<number, BlockShares>();
  kept.set(plan, ofPlan);
  const shares = ofPlan.get(block) ?? blockShares(plan, block);
  ofPlan.set(block, shares);
  const [oldest] = ofPlan.keys();
  if (ofPlan.size > mostKept && oldest !== undefined) ofPlan.delete(oldest);
  return shares;
}

/** The draws of each block as values. */
export function valuesByBlock(plan: DrawPlan): (block: number) => BlockValues {
  const quantileOf = new Map(plan.inputs.map((input) => [input.id, valueAtShare(input)]));
  return (block) => {
    const shares = sharesOf(plan, block);
    return {
      shares,
      of: (stage, draw) => {
        const values = new Map<string, number>();
        for (const [id, column] of shares[stage]) {
          const value = quantileOf.get(id)?.(at(column, draw));
          if (value !== undefined) values.set(id, value);
        }
        return values;
      },
    };
  };
}
