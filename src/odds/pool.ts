import { availableParallelism } from "node:os";
import type { AssumptionSet } from "../assumptions/entry.js";
import { InputError } from "../study/reading/problems.js";
import type { Answers, Question, Questions, Reply, StudyToDraw } from "./messages.js";
import { type Seat, workerFile, workerSeat } from "./seat.js";

/** A study could not be drawn for a reason that is not its author's. The message begins with the study's name. */
export class OddsError extends Error {}

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

/** @param file the compiled script of a worker */
export function workerPool(assumptions: AssumptionSet, size = usualWorkers(), file = workerFile): WorkerPool {
  const seats = Array.from({ length: size }, () => workerSeat(assumptions, file));
  const { taken, release } = queueOf(seats);
  let closed = false;
  return {
    size,
    ask: async <Kind extends keyof Questions>(
      study: StudyToDraw,
      kind: Kind,
      asked: Questions[Kind],
      signal: AbortSignal,
    ) => {
      const seat = await taken();
      const stop = () => void seat.stop();
      try {
        signal.throwIfAborted();
        if (closed) throw new Error("the workers are stopped");
        signal.addEventListener("abort", stop, { once: true });
        const question = { kind, ...asked } as Question;
        return answerOf(await seat.answer(study, question), study) as Answers[Kind];
      } catch (error) {
        signal.throwIfAborted();
        throw error instanceof InputError ? error : oddsError(study, error);
      } finally {
        signal.removeEventListener("abort", stop);
        release(seat);
      }
    },
    close: async () => {
      closed = true;
      await Promise.all(seats.map((seat) => seat.stop()));
    },
  };
}

/** Gives the seats to those who wait for one, first come, first served. */
function queueOf(seats: readonly Seat[]) {
  const free = [...seats];
  const waiting: ((seat: Seat) => void)[] = [];
  return {
    taken: async () => free.pop() ?? (await new Promise<Seat>((resolve) => waiting.push(resolve))),
    release: (seat: Seat) => {
      const first = waiting.shift();
      if (first) first(seat);
      else free.push(seat);
    },
  };
}

function answerOf(reply: Reply, { document }: StudyToDraw): Answers[keyof Answers] {
  if (reply.kind === "answer") return reply.answer;
  if (reply.problems.length > 0) throw new InputError(document.study.name, reply.problems);
  throw new Error(reply.message);
}

function oddsError({ document }: StudyToDraw, cause: unknown): OddsError {
  const reason = cause instanceof Error ? cause.message : String(cause);
  return new OddsError(`${document.study.name}: ${reason}`, { cause });
}
