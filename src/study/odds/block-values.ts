import { at } from "../../lists.js";
import {
  type BlockShares,
  blockShares,
  type DrawPlan,
  futuresPerBlock,
  valueAtShare,
} from "../../model/futures/draw-plan.js";
import type { Values } from "./moved-quantities.js";
import { usualMostFutures } from "./odds-settings.js";

/** Draws of a block; a share is turned into a value where it is needed, by the one worker that needs it. */
export interface BlockValues {
  readonly shares: BlockShares;
  readonly of: (stage: "lake" | "chances", draw: number) => Values;
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
  const inputs = { lake: stageOf(plan, "lake"), chances: stageOf(plan, "chances") };
  return (block) => {
    const shares = sharesOf(plan, block);
    return {
      shares,
      of: (stage, draw) => {
        const { places, quantiles } = inputs[stage];
        const values = quantiles.map(({ id, quantile }) => quantile(at(shares[stage].get(id) ?? [], draw)));
        const get = (id: string) => {
          const place = places.get(id);
          return place === undefined ? undefined : values[place];
        };
        return { get, has: (id) => places.has(id) };
      },
    };
  };
}

/** Inputs of a stage with their places among them. */
function stageOf({ inputs }: DrawPlan, stage: "lake" | "chances") {
  const own = inputs.filter((input) => input.stage === stage);
  return {
    places: new Map(own.map(({ id }, place) => [id, place])),
    quantiles: own.map((input) => ({ id: input.id, quantile: valueAtShare(input) })),
  };
}
