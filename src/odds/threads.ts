import { availableParallelism } from "node:os";
import { join } from "node:path";
import { projectRoot } from "../project-root.js";
import type { Reply } from "../study/reading/replies.js";
import { type PoolSettings, type ThreadPool, threadPool } from "../workers/thread-pool.js";
import type { Answers, Request } from "./messages.js";

/** Threads that draw; what they draw is told with each question. */
export interface DrawingThreads extends ThreadPool<Request, Reply<Answers[keyof Answers]>> {
  readonly size: number;
}

const mostWorkers = 4;

export const usualWorkers = () => Math.min(availableParallelism(), mostWorkers);

/** The compiled worker, also when this file is run as it is written. */
const workerFile = join(projectRoot, "dist", "odds", "worker.js");

const settings = {
  /** Twice as much makes them a tenth faster, and each holds 35 MB more. */
  youngMegabytes: 16,
  /** Pages and their figures come first. */
  niceness: 10,
  /** Draws are many and long, and a new worker has lost little. */
  stopsBusy: true,
  workerData: () => undefined,
};

/** Each is started when first needed. @param file the compiled script of a worker */
export const drawingThreads = (size = usualWorkers(), file = workerFile): DrawingThreads =>
  // An idle worker holds some 60 MB, and a new one is slow for its first draws.
  threadsOf(size, { file, idleSeconds: 120 });

/** Does what needs draws with threads that are started before: they load what they need while this one does. */
export async function withThreads(work: (threads: DrawingThreads) => Promise<void>): Promise<void> {
  const threads = threadsOf(usualWorkers(), { file: workerFile });
  threads.warm();
  try {
    await work(threads);
  } finally {
    await threads.close();
  }
}

const threadsOf = (size: number, own: Pick<PoolSettings, "file" | "idleSeconds">): DrawingThreads => ({
  ...threadPool({ ...settings, ...own, threads: size }),
  size,
});
