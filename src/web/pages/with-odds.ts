import { setTimeout as pause } from "node:timers/promises";
import type { Answering, LatestAnswer, LatestOf } from "../../app/answers/questions.js";
import { BusyError } from "../../app/run-queue.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { Odds } from "../../study/odds/odds.js";

/** Where the odds of a study come from. */
export interface OddsSource {
  /** The odds that were drawn for a study's text, if they are kept. */
  readonly knownOdds: (entry: StudyEntry) => Odds | undefined;
  /** Draws them, or waits for whoever does. @throws BusyError, OddsError; the signal's reason */
  readonly drawn: (entry: StudyEntry, signal: AbortSignal) => Promise<Odds>;
  /** The same if they come within some milliseconds; else they go on being drawn for whoever asks next. */
  readonly drawnWithin: (milliseconds: number, entry: StudyEntry) => Promise<Odds | undefined>;
}

type ToldWithOdds = "report" | "printable";

const busyMilliseconds = 500;

/**
 * What is told of a study with its odds; begun again where it was edited while they were drawn. Where as many studies
 * wait to be drawn as may, it waits for its turn: pages say so meanwhile.
 */
export async function askWithOdds<Which extends ToldWithOdds>(
  { answers, drawn, knownOdds }: Pick<OddsSource, "drawn" | "knownOdds"> & { readonly answers: Answering },
  kind: Which,
  latest: LatestOf<Which, StudyEntry>,
  signal: AbortSignal,
): Promise<LatestAnswer<Which, StudyEntry>> {
  for (;;) {
    try {
      await drawn(latest.find(), signal);
      const found = await answers.askLatest(kind, latest, signal);
      if (knownOdds(found.entry)) return found;
    } catch (error) {
      if (!(error instanceof BusyError)) throw error;
      await pause(busyMilliseconds, undefined, { signal });
    }
  }
}

const figuresMilliseconds = 1000;

/**
 * The figures of a study, with its odds if they come soon: while it is edited they may be drawn for a long time. Until
 * they are there the headline is null, and all figures are at central values.
 */
export async function askFigures(
  { answers, drawnWithin }: Pick<OddsSource, "drawnWithin"> & { readonly answers: Answering },
  latest: LatestOf<"figures", StudyEntry>,
  signal: AbortSignal,
): Promise<LatestAnswer<"figures", StudyEntry>> {
  await drawnWithin(figuresMilliseconds, latest.find());
  return answers.askLatest("figures", latest, signal);
}
