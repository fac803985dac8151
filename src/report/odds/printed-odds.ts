import type { Odds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { reportContext } from "../document/context.js";
import type { PrintedOdds } from "./odds-words.js";
import { sensitivitySentences } from "./sensitivity-sentences.js";

/** Inputs whose weight is told in a sentence each. */
const printedInputs = 3;

/** Odds as the report tells them. */
export function printableOdds(run: StudyRun, odds: Odds): PrintedOdds {
  const { format } = reportContext(run);
  const reading = { format, assumptions: run.assumptions, document: run.document, typed: run.typed };
  return { odds, sensitivitySentences: sensitivitySentences(odds.matters, printedInputs, reading) };
}
