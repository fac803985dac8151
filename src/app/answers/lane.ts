import type { Answer, Kind, Question } from "./questions.js";
import type { AnswerThread } from "./thread.js";

/** As many questions wait for a worker as may. */
export class QueueFullError extends Error {}

/** Questions for one worker, first come, first served. */
export interface Lane {
  readonly warm: () => void;
  /**
   * @param signal leaves the question out if it is given before its turn
   * @throws QueueFullError where as many wait as may; as the worker does
   */
  readonly ask: (question: Question, signal?: AbortSignal) => Promise<Answer<Kind>>;
  readonly close: () => Promise<void>;
}

const stopped = "the workers are stopped";

interface Waiting {
  readonly question: Question;
  readonly resolve: (answer: Answer<Kind>) => void;
  readonly reject: (error: unknown) => void;
  /** Its turn has come, or it is left out. */
  readonly taken: () => void;
}

export function lane(thread: AnswerThread, mostWaiting: number): Lane {
  const waiting: Waiting[] = [];
  let isBusy = false;
  let isClosed = false;
  const next = async (): Promise<void> => {
    const first = isBusy ? undefined : waiting.shift();
    if (!first) return;
    isBusy = true;
    first.taken();
    try {
      first.resolve(await thread.answer(first.question));
    } catch (error) {
      first.reject(error);
    } finally {
      isBusy = false;
      void next();
    }
  };
  return {
    warm: thread.warm,
    ask: (question, signal) =>
      new Promise((resolve, reject) => {
        signal?.throwIfAborted();
        if (isClosed) throw new Error(stopped);
        if (waiting.length >= mostWaiting) throw new QueueFullError();
        const leave = () => {
          waiting.splice(waiting.indexOf(own), 1);
          reject(signal?.reason);
        };
        const taken = () => signal?.removeEventListener("abort", leave);
        const own: Waiting = { question, resolve, reject, taken };
        waiting.push(own);
        signal?.addEventListener("abort", leave, { once: true });
        void next();
      }),
    close: async () => {
      isClosed = true;
      for (const { reject } of waiting.splice(0)) reject(new Error(stopped));
      await thread.stop();
    },
  };
}
