import { createHash } from "node:crypto";
import type { DrawControl } from "../odds/draw.js";
import type { StudyToDraw } from "../odds/messages.js";
import type { Odds } from "../study/odds.js";
import { type QueueSettings, type RunState, runQueue } from "./run-queue.js";

export type OddsState = RunState | { readonly state: "done"; readonly odds: Odds };

/** A reader's question: the study, and the text that it was read from. */
export interface OddsQuestion {
  readonly text: string;
  readonly study: StudyToDraw;
}

/** Where readers ask how sure a study is. */
export interface OddsDesk {
  /**
   * The result, or else the run that will bring it, started or joined.
   * @throws BusyError; or what the run failed with, told once, after which asking starts it again
   */
  readonly ask: (question: OddsQuestion) => OddsState;
  readonly cancel: (question: OddsQuestion) => void;
  /** The result, if it is kept; nothing is started for it. */
  readonly known: (question: OddsQuestion) => Odds | undefined;
}

export interface DeskSettings extends QueueSettings {
  readonly draw: (study: StudyToDraw, control: DrawControl) => Promise<Odds>;
  /** Results that are remembered. */
  readonly mostKept: number;
}

export const usualDesk = { patienceMilliseconds: 30_000, mostWaiting: 3, mostKept: 8 };

type Ending = { readonly odds: Odds } | { readonly error: unknown };

/** Runs and results go by the study's text and settings; the assumptions are those that the server started with. */
export function oddsDesk({ draw, mostKept, ...queueSettings }: DeskSettings): OddsDesk {
  const queue = runQueue(queueSettings);
  const endings = new Map<string, Ending>();
  const keep = (key: string, ending: Ending) => {
    endings.delete(key);
    endings.set(key, ending);
    const oldest = endings.keys().next().value;
    if (endings.size > mostKept && oldest !== undefined) endings.delete(oldest);
  };
  return {
    ask: ({ text, study }) => {
      const key = digest(text, study);
      const ending = endings.get(key);
      if (!ending) {
        return queue.join(key, async (control) => {
          try {
            keep(key, { odds: await draw(study, control) });
          } catch (error) {
            if (!control.signal.aborted) keep(key, { error });
          }
        });
      }
      endings.delete(key);
      if ("error" in ending) throw ending.error;
      keep(key, ending);
      return { state: "done", odds: ending.odds };
    },
    cancel: ({ text, study }) => queue.cancel(digest(text, study)),
    known: ({ text, study }) => {
      const ending = endings.get(digest(text, study));
      return ending && "odds" in ending ? ending.odds : undefined;
    },
  };
}

const digest = (text: string, { settings }: StudyToDraw) =>
  createHash("sha256")
    .update(JSON.stringify([text, settings]))
    .digest("hex");
