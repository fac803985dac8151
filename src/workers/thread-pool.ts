import { randomUUID } from "node:crypto";
import { once, setMaxListeners } from "node:events";
import { setFlagsFromString } from "node:v8";
import PQueue from "p-queue";
import { Piscina } from "piscina";
import { tuneEngine } from "./engine.js";

/** As many tasks wait for a thread as may. */
export class QueueFullError extends Error {}

/** An answer did not come in the time that it may take. */
export class TookTooLongError extends Error {}

export interface PoolSettings {
  /** The compiled script of a worker. It exports `work`: what answers a task, or a promise of it once all is loaded. */
  readonly file: string;
  /** What each worker is started with. */
  readonly workerData: () => unknown;
  readonly threads: number;
  /** Half of the young memory of each, MB. */
  readonly youngMegabytes: number;
  /** How much the threads stand back for others on Linux, from 0 to 19, added to that of the process. */
  readonly niceness: number;
  /** After which a thread that nobody asks ends. All are started together and kept if left out. */
  readonly idleSeconds?: number;
  /** After which a thread that has not answered is stopped. */
  readonly longestSeconds?: number;
  /** Tasks that may wait for a thread. */
  readonly mostWaiting?: number;
  /** A task's signal stops the thread that is busy with it, too; else one that is begun goes on. */
  readonly stopsBusy: boolean;
}

export interface TaskSettings {
  /** Leaves the task out before its turn. */
  readonly signal?: AbortSignal | undefined;
  /** Higher ones come first; 0 if left out. */
  readonly priority?: number;
  /** Once one is begun, those that wait about the same come next: a thread has at hand what they need. */
  readonly about?: string | undefined;
}

/** Threads that are started when needed, and again after one was stopped or lost. */
export interface ThreadPool<Task, Result> {
  /** Starts the threads that are kept, ahead of the first task. */
  readonly warm: () => void;
  /** Tasks that wait or are under way. */
  readonly open: () => number;
  /**
   * @param task told once its turn has come
   * @throws QueueFullError; TookTooLongError; the signal's reason; what the worker throws, or Error if it ends
   */
  readonly run: (task: () => Task, settings?: TaskSettings) => Promise<Result>;
  /** Stops all threads; open tasks are refused. */
  readonly close: () => Promise<void>;
}

interface OpenTask {
  readonly id: string;
  readonly about: string | undefined;
  readonly priority: number;
  readonly ending: AbortController;
  isWaiting: boolean;
}

/** Comes before whatever is about something else. */
const ahead = 1000;

/** Tasks wait here rather than in the threads' own queue, which knows no priority for tasks that may be aborted. */
export function threadPool<Task, Result>(settings: PoolSettings): ThreadPool<Task, Result> {
  const { threads: concurrency, mostWaiting = Number.POSITIVE_INFINITY, longestSeconds } = settings;
  const queue = new PQueue({ concurrency });
  const open = new Set<OpenTask>();
  const stopped = new Error("the workers are stopped");
  let isClosed = false;
  let threads: StartedThreads<Task, Result> | undefined;
  const endAll = (reason: unknown) => {
    for (const { ending } of open) ending.abort(reason);
  };
  const started = () => {
    youngMemory(settings.youngMegabytes);
    threads ??= startedThreads<Task, Result>(settings, endAll);
    return threads;
  };
  const work = async (task: () => Task, own: OpenTask) => {
    own.isWaiting = false;
    letFollow(own, open, queue);
    const clear = limited(own.ending, longestSeconds);
    try {
      return await started().run(task, own.ending.signal);
    } finally {
      clear();
    }
  };
  return {
    warm: () => void started(),
    open: () => open.size,
    run: async (task, { signal, priority = 0, about } = {}) => {
      signal?.throwIfAborted();
      if (isClosed) throw stopped;
      if (queue.size >= mostWaiting) throw new QueueFullError();
      const ending = new AbortController();
      const own: OpenTask = { id: randomUUID(), about, priority, ending, isWaiting: true };
      const leave = () => {
        if (!own.isWaiting && !settings.stopsBusy) return;
        own.isWaiting = false;
        ending.abort(signal?.reason);
      };
      if (signal) {
        // Any number of tasks may end by the same signal.
        setMaxListeners(0, signal);
        signal.addEventListener("abort", leave, { once: true });
      }
      open.add(own);
      try {
        return await queue.add(() => work(task, own), { id: own.id, priority, signal: ending.signal });
      } finally {
        signal?.removeEventListener("abort", leave);
        open.delete(own);
      }
    },
    close: async () => {
      isClosed = true;
      endAll(stopped);
      await threads?.stop();
    },
  };
}

/** Tasks that wait about the same as one that is begun come next. */
function letFollow({ about }: OpenTask, open: Iterable<OpenTask>, queue: PQueue): void {
  if (about === undefined) return;
  for (const other of open)
    if (other.isWaiting && other.about === about) queue.setPriority(other.id, other.priority + ahead);
}

interface StartedThreads<Task, Result> {
  readonly run: (task: () => Task, signal: AbortSignal) => Promise<Result>;
  readonly stop: () => Promise<void>;
}

/**
 * Nothing is asked of threads that are started together, and none is stopped, before they have loaded their script: Node 20
 * now and then ends the whole process where one is stopped meanwhile.
 */
function startedThreads<Task, Result>(
  settings: PoolSettings,
  endAll: (reason: unknown) => void,
): StartedThreads<Task, Result> {
  const pool = newThreads<Task, Result>(settings).on("error", (error) => {
    if (!isLateAnswer(error)) endAll(error);
  });
  const loads = pool.threads.map((thread) => Promise.race([once(thread, "message"), once(thread, "exit")]));
  let isLoading = true;
  const loading = Promise.allSettled(loads).then(() => {
    isLoading = false;
    for (const thread of pool.threads) thread.unref();
  });
  const loaded = () => {
    // The process waits for them, too.
    for (const thread of pool.threads) thread.ref();
    return loading;
  };
  return {
    run: async (task, signal) => {
      if (isLoading) await loaded();
      signal.throwIfAborted();
      return pool.run(task(), { signal });
    },
    stop: async () => {
      if (isLoading) await loaded();
      await pool.destroy();
    },
  };
}

/** A thread that is stopped may have answered in the same moment: nobody waits for that any more. */
const isLateAnswer = (error: unknown): boolean =>
  error instanceof Error && error.message.startsWith("Unexpected message from Worker");

function newThreads<Task, Result>(settings: PoolSettings): Piscina<Task, Result> {
  const { file, workerData, threads, niceness, idleSeconds } = settings;
  tuneEngine();
  return new Piscina<Task, Result>({
    filename: file,
    name: "work",
    workerData: workerData(),
    resourceLimits: { maxOldGenerationSizeMb: mostMegabytes },
    minThreads: idleSeconds === undefined ? threads : 0,
    maxThreads: threads,
    idleTimeout: 1000 * (idleSeconds ?? 0),
    // Elsewhere it would be that of the whole process.
    niceIncrement: process.platform === "linux" ? niceness : 0,
    // A thread that waits for messages rather than for a lock gives memory back meanwhile.
    atomics: "disabled",
    recordTiming: false,
  });
}

/**
 * Far more than a worker ever needs. The engine lets a heap of this limit grow by some 60 % between its collections, and
 * one without a limit to four times what lives in it.
 */
const mostMegabytes = 1024;

/**
 * Of the threads that are started from now on; heaps take it when they are made: that of the main thread keeps its own.
 * A flag of the engine goes before a worker's resource limits.
 */
function youngMemory(megabytes: number): void {
  setFlagsFromString(`--max-semi-space-size=${megabytes}`);
}

/** @returns what ends the limit */
function limited(ending: AbortController, seconds: number | undefined): () => void {
  if (seconds === undefined) return () => undefined;
  const late = () => ending.abort(new TookTooLongError(`an answer took longer than ${seconds} s`));
  const clock = setTimeout(late, 1000 * seconds);
  return () => clearTimeout(clock);
}
