import { futuresPerBlock, lakesPerBlock } from "../model/futures/draw-plan.js";
import type { LakeFutures } from "../study/draws.js";
import type { OddsSummary } from "../study/odds-summary.js";
import type { StudyToDraw } from "./messages.js";
import type { WorkerPool } from "./pool.js";

/** Futures that are drawn where nothing else is asked for. */
export const usualFutures = 5 * futuresPerBlock;
/** Memory for their figures grows with them. */
export const mostFutures = 100 * futuresPerBlock;

export interface Progress {
  /** Draws of the lake. */
  readonly done: number;
  readonly planned: number;
}

export interface DrawControl {
  /** Rounded up to whole blocks. */
  readonly futures: number;
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/**
 * Draws of the lake in the order of blocks and places, whichever worker made them and when: the figures do not depend on
 * the number of workers. One that fails ends the others.
 */
export async function drawLakes(
  pool: WorkerPool,
  study: StudyToDraw,
  { futures, signal, onProgress }: DrawControl,
): Promise<LakeFutures[]> {
  const planned = Math.ceil(futures / futuresPerBlock) * lakesPerBlock;
  const ending = new AbortController();
  const either = AbortSignal.any([signal, ending.signal]);
  let done = 0;
  onProgress({ done, planned });
  const drawn = Array.from({ length: planned }, async (_, unit) => {
    const place = { block: Math.floor(unit / lakesPerBlock), lake: unit % lakesPerBlock };
    const lake = await pool.ask(study, "lake", place, either);
    onProgress({ done: ++done, planned });
    return lake;
  });
  try {
    return await Promise.all(drawn);
  } catch (error) {
    ending.abort(error);
    throw error;
  }
}

/** Draws a study and tells what its futures say. */
export async function oddsOf(
  pool: WorkerPool,
  study: StudyToDraw,
  control: DrawControl,
): Promise<OddsSummary> {
  const lakes = await drawLakes(pool, study, control);
  return pool.ask(study, "summary", { lakes }, control.signal);
}
