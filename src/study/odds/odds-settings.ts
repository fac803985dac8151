import type { DrawPlan } from "../../model/futures/draw-plan.js";
import { futuresPerBlock, lakesPerBlock } from "../../model/futures/draw-plan.js";

/** Blocks below which no error can be told, and above which their figures take too much memory. */
export const leastBlocks = 2;
const mostBlocks = 1600;
/** Blocks that are drawn whatever the error, so that the tails stand on a thousand lakes. */
export const usualBlocks = 1024 / lakesPerBlock;
/** Blocks after which first figures are told, while the rest is drawn. */
export const earlyBlocks = 64 / lakesPerBlock;
/** Most blocks after which figures are told again, and what matters for the first time. */
export const blocksAtOnce = 256 / lakesPerBlock;
/**
 * Largest standard error of the mean net benefit, as a share of what an infestation is expected to cost without a program,
 * or of the net benefit where that is more.
 */
export const finestError = 0.004;

export const leastFutures = leastBlocks * futuresPerBlock;
export const mostFutures = mostBlocks * futuresPerBlock;
/** Unless a study says otherwise: half more than are drawn whatever the error. */
export const usualMostFutures = 1.5 * usualBlocks * futuresPerBlock;
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
