import type { Answering, LatestAnswer, LatestOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { Odds } from "../../study/odds/odds.js";

/** Where the odds of a study come from. */
export interface OddsSource {
  /** The odds that were drawn for a study's text, if they are kept. */
  readonly knownOdds: (entry: StudyEntry) => Odds | undefined;
  /** Draws them, or waits for whoever does. @throws BusyError, OddsError; the signal's reason */
  readonly drawn: (entry: StudyEntry, signal: AbortSignal) => Promise<Odds>;
}

type ToldWithOdds = "report" | "printable" | "figures";

/** What is told of a study with its odds; begun again where it was edited while they were drawn. */
export async function askWithOdds<Which extends ToldWithOdds>(
  { answers, drawn, knownOdds }: OddsSource & { readonly answers: Answering },
  kind: Which,
  latest: LatestOf<Which, StudyEntry>,
  signal: AbortSignal,
): Promise<LatestAnswer<Which, StudyEntry>> {
  for (;;) {
    await drawn(latest.find(), signal);
    const found = await answers.askLatest(kind, latest, signal);
    if (knownOdds(found.entry)) return found;
  }
}
