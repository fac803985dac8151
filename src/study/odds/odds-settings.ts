import type { DrawPlan } from "../../model/futures/draw-plan.js";
import { futuresPerBlock } from "../../model/futures/draw-plan.js";

/** Blocks below which no error can be told, and above which their figures take too much memory. */
export const leastBlocks = 2;
const mostBlocks = 400;
/** Blocks that are drawn whatever the error, so that tails stand on more than a hundred lakes and an error on several blocks. */
export const usualBlocks = 8;
/**
 * Largest standard error of the mean net benefit, as a share of what an infestation is expected to cost without a program,
 * or of the net benefit where that is more.
 */
export const finestError = 0.015;

export const leastFutures = leastBlocks * futuresPerBlock;
export const mostFutures = mostBlocks * futuresPerBlock;
/** Of a study that states none: the same study always prints the same figures. */
export const usualSeed = 1;

/** What decides which futures are drawn and what is told of them, in plain numbers. */
export interface OddsSettings extends DrawSettings {
  readonly confidence: number;
  readonly precision: number;
  readonly mostFutures: number;
}

export interface DrawSettings {
  readonly seed: number;
  readonly sampling: DrawPlan["sampling"];
}
