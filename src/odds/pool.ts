import { randomUUID } from "node:crypto";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { serialize } from "node:v8";
import type { AssumptionSet } from "../assumptions/entry.js";
import { PlainError } from "../plain-error.js";
import { projectRoot } from "../project-root.js";
import { InputError } from "../study/reading/problems.js";
import { answerIn, type Reply } from "../study/reading/replies.js";
import { threadPool } from "../workers/thread-pool.js";
import type { Answers, Question, Questions, Request, SharedStudy, StudyToDraw } from "./messages.js";

/** A study could not be drawn for a reason that is not its author's. The message begins with the study's name. */
export class OddsError extends PlainError {}

/** Workers that answer questions about studies. Each is started when first needed, then kept with what it has loaded. */
export interface WorkerPool {
  readonly size: number;
  /**
   * Questions are answered in the order in which they are asked, as many at once as there are workers.
   * @param signal ends the question, and stops the worker that is busy with it
   * @throws InputError, or OddsError with the study's name; the signal's reason if it ended the question
   */
  readonly ask: <Kind extends keyof Questions>(
    study: StudyToDraw,
    kind: Kind,
    asked: Questions[Kind],
    signal: AbortSignal,
  ) => Promise<Answers[Kind]>;
  /** Stops all workers; open questions are refused. */
  readonly close: () => Promise<void>;
}

const mostWorkers = 4;

export const usualWorkers = () => Math.min(availableParallelism(), mostWorkers);

/** The compiled worker, also when this file is run as it is written. */
const workerFile = join(projectRoot, "dist", "odds", "worker.js");

const threadSettings = {
  /** Twice as much makes them a tenth faster, and each holds 35 MB more. */
  youngMegabytes: 16,
  /** Pages and their figures come first. */
  niceness: 10,
  /** An idle worker holds some 60 MB, and a new one is slow for its first draws. */
  idleSeconds: 120,
  /** Draws are many and long, and a new worker has lost little. */
  stopsBusy: true,
};

/** @param file the compiled script of a worker */
export function workerPool(assumptions: AssumptionSet, size = usualWorkers(), file = workerFile): WorkerPool {
  const threads = threadPool<Request, Reply<Answers[keyof Answers]>>({
    ...threadSettings,
    ...{ file, workerData: assumptions, threads: size },
  });
  const shared = new WeakMap<StudyToDraw, SharedStudy>();
  const sharedOf = (study: StudyToDraw): SharedStudy => {
    const made = shared.get(study) ?? inSharedMemory(study);
    shared.set(study, made);
    return made;
  };
  return {
    size,
    close: threads.close,
    ask: async <Kind extends keyof Questions>(
      study: StudyToDraw,
      kind: Kind,
      asked: Questions[Kind],
      signal: AbortSignal,
    ) => {
      try {
        const question = { kind, ...asked } as Question;
        const request = { study: sharedOf(study), question };
        const reply = await threads.run(() => request, { signal });
        return answerIn(reply) as Answers[Kind];
      } catch (error) {
        signal.throwIfAborted();
        throw error instanceof InputError ? error : oddsError(study, error);
      }
    },
  };
}

function inSharedMemory(study: StudyToDraw): SharedStudy {
  const written = serialize(study);
  const bytes = new Uint8Array(new SharedArrayBuffer(written.byteLength));
  bytes.set(written);
  return { id: randomUUID(), bytes };
}

function oddsError({ document }: StudyToDraw, cause: unknown): OddsError {
  const reason = cause instanceof Error ? cause.message : String(cause);
  return new OddsError(`${document.study.name}: ${reason}`, { cause });
}
