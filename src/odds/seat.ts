import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import type { AssumptionSet } from "../assumptions/entry.js";
import { heapLimits, youngMemory } from "./heap.js";
import { idleStop } from "./idle-stop.js";
import type { Question, Reply, Request, StudyToDraw } from "./messages.js";

/** The compiled worker: beside this file when compiled, in `dist` when this file is run as it is written. */
export const workerFile = fileURLToPath(new URL("../../dist/odds/worker.js", import.meta.url));

/** A place for one worker, which is started when it is needed and again after it was stopped or lost. */
export interface Seat {
  /** One question at a time. @throws Error if the worker ends before it answers */
  readonly answer: (study: StudyToDraw, question: Question) => Promise<Reply>;
  /** Stops the worker at once. */
  readonly stop: () => Promise<void>;
}

/** More makes them little faster, and each holds its own. */
const youngMegabytes = 8;

/** After which a worker that nobody asks ends: it holds some 60 MB, and a new one is slow for its first draws. */
const idleSeconds = 120;

export function workerSeat(assumptions: AssumptionSet, file: string): Seat {
  let worker: Worker | undefined;
  let sent: StudyToDraw | undefined;
  const forget = (ended: Worker | undefined) => {
    if (worker !== ended) return;
    worker = undefined;
    sent = undefined;
  };
  const started = () => {
    youngMemory(youngMegabytes);
    const made = new Worker(file, { workerData: assumptions, resourceLimits: heapLimits });
    return made.on("error", () => forget(made)).on("exit", () => forget(made));
  };
  const stop = async () => {
    const stopped = worker;
    forget(stopped);
    await stopped?.terminate();
  };
  const { busy, idle } = idleStop(idleSeconds, stop);
  return {
    stop,
    answer: async (study, question) => {
      busy();
      worker ??= started();
      const request = { study: study === sent ? undefined : study, question };
      sent = study;
      const reply = await replyOf(worker, request).finally(idle);
      if (reply.kind === "failure") sent = undefined;
      return reply;
    },
  };
}

/** An idle worker does not keep the process alive. */
function replyOf(worker: Worker, request: Request): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const settled = () => {
      worker.off("message", onMessage).off("error", onError).off("exit", onExit);
      worker.unref();
    };
    const onMessage = (reply: Reply) => {
      settled();
      resolve(reply);
    };
    const onError = (error: unknown) => {
      settled();
      reject(error);
    };
    const onExit = (code: number) => onError(new Error(`a worker ended with code ${code}`));
    worker.on("message", onMessage).on("error", onError).on("exit", onExit);
    worker.ref();
    worker.postMessage(request);
  });
}
