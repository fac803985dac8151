import {
  type BlockShares,
  blockShares,
  type DrawPlan,
  valueAtShare,
} from "../../../src/model/futures/draw-plan.js";

/** All values of a block at once, as `blockShares` has their shares: what a plain loop over futures starts from. */
export function blockDraws(plan: DrawPlan, block: number): BlockShares {
  const { lake, chances, luck } = blockShares(plan, block);
  const valuesOf = (shares: BlockShares["lake"]) =>
    new Map(
      plan.inputs.flatMap((input) => {
        const column = shares.get(input.id);
        return column ? [[input.id, column.map(valueAtShare(input))] as const] : [];
      }),
    );
  return { lake: valuesOf(lake), chances: valuesOf(chances), luck };
}
