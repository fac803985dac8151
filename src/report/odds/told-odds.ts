import type { Odds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { reportContext } from "../document/context.js";
import type { ToldOdds } from "./odds-words.js";
import { mattersSentences } from "./sensitivity-sentences.js";

/** Inputs whose weight is told in a sentence each. */
const toldInputs = 3;

/** Odds as the report tells them. */
export function toldOdds(run: StudyRun, odds: Odds): ToldOdds {
  const { format } = reportContext(run);
  const reading = { format, assumptions: run.assumptions, document: run.document };
  return { odds, matters: mattersSentences(odds.matters, toldInputs, reading) };
}
