import { randomUUID } from "node:crypto";
import { serialize } from "node:v8";
import type { AssumptionSet } from "../assumptions/entry.js";
import { PlainError } from "../plain-error.js";
import { InputError } from "../study/reading/problems.js";
import { answerIn } from "../study/reading/replies.js";
import type { Answers, GivenStudy, Question, Questions, SharedStudy, StudyToDraw } from "./messages.js";
import { drawingThreads } from "./threads.js";

/** A study could not be drawn for a reason that is not its author's. The message begins with the study's name. */
export class OddsError extends PlainError {}

/** Workers that answer questions about studies, each kept with what it has loaded. */
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

/** Workers for studies that rest on these assumptions, which are asked for with the first question. */
export function workerPool(assumptions: () => AssumptionSet, threads = drawingThreads()): WorkerPool {
  const shared = new WeakMap<StudyToDraw, SharedStudy>();
  const sharedOf = (study: StudyToDraw): SharedStudy => {
    const made = shared.get(study) ?? inSharedMemory({ study, assumptions: assumptions() });
    shared.set(study, made);
    return made;
  };
  return {
    size: threads.size,
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

function inSharedMemory(given: GivenStudy): SharedStudy {
  const written = serialize(given);
  const bytes = new Uint8Array(new SharedArrayBuffer(written.byteLength));
  bytes.set(written);
  return { id: randomUUID(), bytes };
}

function oddsError({ document }: StudyToDraw, cause: unknown): OddsError {
  const reason = cause instanceof Error ? cause.message : String(cause);
  return new OddsError(`${document.study.name}: ${reason}`, { cause });
}
