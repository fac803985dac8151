import type { StudyRun } from "../study/compute.js";
import type { Odds } from "../study/odds.js";
import { reportContext } from "./context.js";
import { mattersSentences } from "./matters-sentences.js";
import type { ToldOdds } from "./odds-words.js";

/** Inputs whose weight is told in a sentence each. */
const toldInputs = 3;

/** Odds as the report tells them. */
export function toldOdds(run: StudyRun, odds: Odds): ToldOdds {
  const { format } = reportContext(run);
  const reading = { format, assumptions: run.assumptions, document: run.document };
  return { odds, matters: mattersSentences(odds.matters, toldInputs, reading) };
}
