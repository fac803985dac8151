import { setFlagsFromString } from "node:v8";
import type { ResourceLimits } from "node:worker_threads";

/**
 * Half of the young memory, MB, of the workers that are started from now on; heaps take it when they are made: that of the
 * main thread keeps its own. A flag of the engine goes before a worker's resource limits.
 */
export function youngMemory(megabytes: number): void {
  setFlagsFromString(`--max-semi-space-size=${megabytes}`);
}

/**
 * Far more than a worker ever needs. The engine lets a heap of this limit grow by some 60 % between its collections, and
 * one without a limit to four times what lives in it.
 */
export const heapLimits: ResourceLimits = { maxOldGenerationSizeMb: 1024 };
