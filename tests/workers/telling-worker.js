import { getPriority } from "node:os";
import { getHeapStatistics } from "node:v8";
import { resourceLimits, threadId, workerData } from "node:worker_threads";

const told = () => ({
  thread: threadId,
  given: workerData,
  priority: getPriority(),
  oldMegabytes: resourceLimits.maxOldGenerationSizeMb,
  heapMegabytes: getHeapStatistics().heap_size_limit / 1024 / 1024,
});

/** Tells of its thread; waits for the other side first where it is given some shared memory. */
export const work = async ({ wait }) => {
  if (wait) Atomics.wait(wait, 0, 0);
  return told();
};
