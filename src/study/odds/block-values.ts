import { at } from "../../lists.js";
import { type BlockShares, blockShares, type DrawPlan, valueAtShare } from "../../model/futures/draw-plan.js";

/** Draws of a block; a share is turned into a value where it is needed, by the one worker that needs it. */
export interface BlockValues {
  readonly shares: BlockShares;
  readonly of: (stage: "lake" | "chances", draw: number) => ReadonlyMap<string, number>;
}

/** The draws of each block; those of the last are kept. */
export function valuesByBlock(plan: DrawPlan): (block: number) => BlockValues {
  const quantileOf = new Map(plan.inputs.map((input) => [input.id, valueAtShare(input)]));
  let known: { block: number; shares: BlockShares } | undefined;
  return (block) => {
    if (known?.block !== block) known = { block, shares: blockShares(plan, block) };
    const { shares } = known;
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
