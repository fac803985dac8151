import { boardView } from "../report/board/board-view.js";
import { comparisonView } from "../report/board/comparison-view.js";
import { reportContext } from "../report/document/context.js";
import { method } from "../report/document/method.js";
import { infestationView } from "../report/rack/infestation-view.js";
import { programView } from "../report/ramp/program-view.js";
import type { FuturesOdds } from "../study/odds/odds.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { tableText } from "./table-text.js";

/** The comparison for a terminal: the board's answer and the tables behind it. */
export function comparisonText(run: StudyRun, odds?: FuturesOdds): string {
  const context = reportContext(run, odds);
  const board = boardView(context);
  const comparison = comparisonView(context);
  const program = programView(context);
  return [
    board.question,
    board.answer,
    ...(board.certainty === undefined ? [] : [board.certainty]),
    ...(board.bridge === undefined ? [] : [board.bridge]),
    ...(board.increment === undefined ? [] : [board.increment]),
    "",
    ...board.figures.map(({ label, value, note }) => `${label}: ${value}${note === "" ? "" : ` (${note})`}`),
    board.accounts ? tableText(board.accounts) : "",
    ...board.findings,
    "",
    comparison.headline ? tableText(comparison.headline) : "",
    tableText(comparison.options),
    comparison.balance ? tableText(comparison.balance) : "",
    ...(program.atTheRamp.length === 0 ? [] : ["At the ramp", ...program.atTheRamp, ""]),
    ...program.coverage.map(tableText),
    comparison.increments ? tableText(comparison.increments) : "",
    comparison.unitCosts ? tableText(comparison.unitCosts) : "",
    ...comparison.feeNotes,
    "",
    tableText(infestationView(context).byStructure),
    tableText(comparison.bearers),
    ...(comparison.detection === undefined ? [] : [comparison.detection]),
    ...board.changes,
    ...(board.estimate === undefined ? [] : [board.estimate]),
    ...board.failedChecks.map((check) => `Check not passed: ${check}`),
    "",
    method.standing,
  ].join("\n");
}
