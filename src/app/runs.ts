import { createHash } from "node:crypto";
import { setTimeout as pause } from "node:timers/promises";
import { LRUCache } from "lru-cache";
import type { DrawControl } from "../odds/ask-each.js";
import type { StudyToDraw } from "../odds/messages.js";
import { BusyError, type QueueSettings, type RunState, runQueue } from "./run-queue.js";

export type AskedRunState<Result> = RunState | { readonly state: "done"; readonly result: Result };

/** A reader's question: the study, and the text that it was read from. */
export interface RunQuestion {
  readonly text: string;
  readonly study: StudyToDraw;
}

/** Where readers ask for what many lakes have to be worked out for. */
export interface AskedRuns<Result> {
  /**
   * The result, or else the run that will bring it, started or joined.
   * @throws BusyError; or what the run failed with, told once, after which asking starts it again
   */
  readonly ask: (question: RunQuestion) => AskedRunState<Result>;
  readonly cancel: (question: RunQuestion) => void;
  /** The result for a study's text, if it is kept; nothing is started for it. */
  readonly known: (text: string) => Result | undefined;
}

export interface AskedRunSettings<Result> extends QueueSettings {
  readonly draw: (study: StudyToDraw, control: DrawControl) => Promise<Result>;
  /** Results that are remembered. */
  readonly mostKept: number;
}

export const usualRuns = { patienceMilliseconds: 30_000, mostWaiting: 3, mostKept: 8 };

type Ending<Result> = { readonly result: Result } | { readonly error: unknown };

/** Runs and results go by the study's text; the assumptions are those that the server started with. */
export function askedRuns<Result>({
  draw,
  mostKept,
  ...queueSettings
}: AskedRunSettings<Result>): AskedRuns<Result> {
  const queue = runQueue(queueSettings);
  const endings = new LRUCache<string, Ending<Result>>({ max: mostKept });
  return {
    ask: ({ text, study }) => {
      const key = digest(text);
      const ending = endings.get(key);
      if (!ending) {
        return queue.join(key, async (control) => {
          try {
            endings.set(key, { result: await draw(study, control) });
          } catch (error) {
            if (!control.signal.aborted) endings.set(key, { error });
          }
        });
      }
      if ("result" in ending) return { state: "done", result: ending.result };
      endings.delete(key);
      throw ending.error;
    },
    cancel: ({ text }) => queue.cancel(digest(text)),
    known: (text) => {
      const ending = endings.peek(digest(text));
      return ending && "result" in ending ? ending.result : undefined;
    },
  };
}

const digest = (text: string) => createHash("sha256").update(text).digest("hex");

const askEveryMilliseconds = 50;

/** The result, whenever it comes. @throws as asking does; the signal's reason */
export async function resultOf<Result>(
  runs: AskedRuns<Result>,
  question: RunQuestion,
  signal: AbortSignal,
): Promise<Result> {
  for (;;) {
    signal.throwIfAborted();
    const state = runs.ask(question);
    if (state.state === "done") return state.result;
    await pause(askEveryMilliseconds);
  }
}

/** The result if it comes within some milliseconds; undefined also where too many wait already. */
export async function resultWithin<Result>(
  milliseconds: number,
  runs: AskedRuns<Result>,
  question: RunQuestion,
): Promise<Result | undefined> {
  const signal = AbortSignal.timeout(milliseconds);
  try {
    return await resultOf(runs, question, signal);
  } catch (error) {
    if (error === signal.reason || error instanceof BusyError) return undefined;
    throw error;
  }
}
