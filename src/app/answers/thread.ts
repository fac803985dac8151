import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { heapLimits, youngMemory } from "../../odds/heap.js";
import { idleStop } from "../../odds/idle-stop.js";
import { InputError } from "../../study/reading/problems.js";
import type { Reply, WorkerStart } from "./messages.js";
import type { Answer, Kind, Question } from "./questions.js";

/** The compiled worker: beside this file when compiled, in `dist` when this file is run as it is written. */
export const answersFile = fileURLToPath(new URL("../../../dist/app/answers/worker.js", import.meta.url));

/** An answer did not come in the time that it may take. */
export class TookTooLongError extends Error {}

/** A worker that is started when it is needed, and again after it was stopped or lost. */
export interface AnswerThread {
  readonly warm: () => void;
  /** One question at a time. @throws InputError; TookTooLongError; Error if the worker ends before it answers */
  readonly answer: (question: Question) => Promise<Answer<Kind>>;
  readonly stop: () => Promise<void>;
}

/** More makes comparisons little faster. */
const youngMegabytes = 16;

export interface ThreadSettings {
  /** After which a worker that has not answered is stopped. */
  readonly longestSeconds: number;
  /** After which a worker that nobody asks is stopped; never if left out. */
  readonly idleSeconds?: number;
}

export function answerThread(
  start: WorkerStart,
  { longestSeconds, idleSeconds }: ThreadSettings,
  file: string,
): AnswerThread {
  let worker: Worker | undefined;
  const forget = (ended: Worker | undefined) => {
    if (worker === ended) worker = undefined;
  };
  const started = () => {
    youngMemory(youngMegabytes);
    const made = new Worker(file, { workerData: start, resourceLimits: heapLimits });
    made.unref();
    return made.on("error", () => forget(made)).on("exit", () => forget(made));
  };
  const stop = async () => {
    const stopped = worker;
    forget(stopped);
    await stopped?.terminate();
  };
  const idleClock = idleSeconds === undefined ? undefined : idleStop(idleSeconds, stop);
  return {
    stop,
    warm: () => {
      worker ??= started();
    },
    answer: async (question) => {
      idleClock?.busy();
      worker ??= started();
      const limit = { milliseconds: longestSeconds * 1000, stop };
      try {
        return answerOf(await replyOf(worker, question, limit));
      } finally {
        idleClock?.idle();
      }
    },
  };
}

function answerOf(reply: Reply): Answer<Kind> {
  if ("answer" in reply) return reply.answer;
  if ("problems" in reply) throw new InputError(reply.subject, reply.problems);
  throw reply.fault;
}

/** An idle worker does not keep the process alive. */
function replyOf(
  worker: Worker,
  question: Question,
  { milliseconds, stop }: { readonly milliseconds: number; readonly stop: () => Promise<void> },
): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const settle = (how: () => void) => {
      clearTimeout(limit);
      worker.off("message", onMessage).off("error", onError).off("exit", onExit);
      worker.unref();
      how();
    };
    const onMessage = (reply: Reply) => settle(() => resolve(reply));
    const onError = (error: unknown) => settle(() => reject(error));
    const onExit = (code: number) => onError(new Error(`a worker ended with code ${code}`));
    const limit = setTimeout(() => {
      // Stopped first, so that the next question goes to another worker.
      void stop();
      onError(new TookTooLongError(`${question.kind} took longer than ${milliseconds / 1000} s`));
    }, milliseconds);
    worker.on("message", onMessage).on("error", onError).on("exit", onExit);
    worker.ref();
    worker.postMessage(question);
  });
}
