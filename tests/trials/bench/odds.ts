import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as pause } from "node:timers/promises";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import { compare } from "#product/model/compare.js";
import { futuresPerBlock, futuresPerLake, lakesPerBlock } from "#product/model/futures/draw-plan.js";
import { drawLakes } from "#product/odds/draw.js";
import type { StudyToDraw } from "#product/odds/messages.js";
import { type WorkerPool, workerPool } from "#product/odds/pool.js";
import { drawingThreads } from "#product/odds/threads.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { oddsSettings } from "#product/study/format/uncertainty-schema.js";
import { drawnStudy } from "#product/study/odds/draws.js";
import { joinedFutures } from "#product/study/odds/joined-futures.js";
import { usualBlocks } from "#product/study/odds/odds-settings.js";
import { prepareStudy } from "#product/study/prepare/prepared.js";
import { median } from "../median.js";

const repeats = 3;
const scales = [2, 20, 40, usualBlocks];
const plainFutures = 16;

/** As many as every study draws at least: 1,024 lakes with 8 futures each (`src/study/odds/NOTES.md`). */
export const usualFutures = usualBlocks * futuresPerBlock;
/** One block. */
export const editedFutures = futuresPerBlock;

export interface OddsTimes {
  readonly inputs: number;
  /** Milliseconds of the usual futures, warm, by the number of workers; and of one block after an edit of the study. */
  readonly byWorkers: ReadonlyArray<{
    readonly workers: number;
    readonly all: number;
    readonly edited: number;
  }>;
  /** With two workers: time and memory of the whole process by the number of futures. */
  readonly byFutures: ReadonlyArray<{
    readonly futures: number;
    readonly all: number;
    readonly megabytes: number;
  }>;
  /** Longest time for which the main thread did nothing else, ms, over all runs. */
  readonly longestDelay: number;
  /** Time of a whole comparison for each future over that of a future drawn in this thread, taken in turns. */
  readonly plainOverDrawn: number;
}

/** Speed of drawing the futures of all options of a study with every assumption uncertain. */
export async function timeOdds(document: StudyDocument, assumptions: AssumptionSet): Promise<OddsTimes> {
  const settings = oddsSettings(undefined);
  const study = { document, settings };
  const delay = monitorEventLoopDelay({ resolution: 5 });
  const two = workerPool(() => assumptions, drawingThreads(2));
  await time(two, study, usualFutures);
  delay.enable();
  const byFutures: OddsTimes["byFutures"][number][] = [];
  for (const blocks of scales) {
    const futures = blocks * futuresPerBlock;
    const all = await time(two, study, futures);
    byFutures.push({ futures, all, megabytes: process.memoryUsage.rss() / 1e6 });
    await pause(0);
  }
  const one = workerPool(() => assumptions, drawingThreads(1));
  await time(one, study, usualFutures);
  const pools = [one, two];
  const runs: { all: number; edited: number }[][] = [[], []];
  for (let repeat = 0; repeat < repeats; repeat++) {
    for (const [place, pool] of pools.entries()) {
      const edited = await time(pool, editedCopy(study), editedFutures);
      runs[place]?.push({ edited, all: await time(pool, study, usualFutures) });
    }
  }
  delay.disable();
  for (const pool of pools) await pool.close();
  return {
    inputs: drawnStudy(document, assumptions, settings).inputs.length,
    byWorkers: pools.map(({ size }, place) => ({
      workers: size,
      all: median((runs[place] ?? []).map(({ all }) => all)),
      edited: median((runs[place] ?? []).map(({ edited }) => edited)),
    })),
    byFutures,
    longestDelay: delay.max / 1e6,
    plainOverDrawn: plainOverDrawn(study, assumptions),
  };
}

/** The study as after a correction: the workers have to prepare it anew. */
const editedCopy = (study: StudyToDraw): StudyToDraw => ({ ...study });

async function time(pool: WorkerPool, study: StudyToDraw, futures: number): Promise<number> {
  const start = performance.now();
  const { signal } = new AbortController();
  const blocks = { first: 0, count: futures / futuresPerBlock };
  const lakes = await drawLakes(pool, study, blocks, { signal, onProgress: () => undefined });
  if (lakes.length > lakesPerBlock)
    await pool.ask(study, "summary", { futures: joinedFutures(lakes), end: "cap" }, signal);
  return performance.now() - start;
}

function plainOverDrawn({ document, settings }: StudyToDraw, assumptions: AssumptionSet): number {
  const { input, assumed } = prepareStudy(document, assumptions);
  const drawn = drawnStudy(document, assumptions, settings);
  const ratios = Array.from({ length: repeats + 1 }, (_, repeat) => {
    const start = performance.now();
    for (let future = 0; future < plainFutures; future++) compare(input, assumed);
    const between = performance.now();
    for (let lake = 0; lake < plainFutures; lake++) drawn.futures(repeat, lake);
    const end = performance.now();
    return (between - start) / ((end - between) / futuresPerLake);
  });
  return median(ratios.slice(1));
}
