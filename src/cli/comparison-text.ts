import { bearersTable } from "../report/board/bearers-table.js";
import { boardView } from "../report/board/board-view.js";
import { balanceTable, optionsTable } from "../report/board/comparison-view.js";
import { headlineTable } from "../report/board/headline-words.js";
import { incrementsTable } from "../report/board/increments-view.js";
import { reportContext } from "../report/document/context.js";
import { method } from "../report/document/method.js";
import { infestationView } from "../report/rack/infestation-view.js";
import { coverageTables } from "../report/ramp/coverage-view.js";
import { detectionSentence } from "../report/ramp/detection-view.js";
import { feeNotes, unitCostsTable } from "../report/ramp/fees-view.js";
import { rampLines } from "../report/ramp/program-view.js";
import type { TableView } from "../report/words/view-types.js";
import type { FuturesOdds } from "../study/odds/odds.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { tableText } from "./table-text.js";

/** The comparison for a terminal: the board's answer and the tables behind it. */
export function comparisonText(run: StudyRun, odds?: FuturesOdds): string {
  const context = reportContext(run, odds);
  const board = boardView(context);
  const ramp = rampLines(context);
  return [
    board.question,
    board.answer,
    ...[board.certainty, board.bridge, board.increment].filter((text) => text !== undefined),
    "",
    ...board.figures.map(({ label, value, note }) => `${label}: ${value}${note === "" ? "" : ` (${note})`}`),
    textOf(board.accounts),
    ...board.findings,
    "",
    textOf(headlineTable(context)),
    textOf(optionsTable(context)),
    textOf(balanceTable(context)),
    ...(ramp.length === 0 ? [] : ["At the ramp", ...ramp, ""]),
    ...coverageTables(context).map(tableText),
    textOf(incrementsTable(context)),
    textOf(unitCostsTable(context)),
    ...feeNotes(context),
    "",
    tableText(infestationView(context).byStructure),
    tableText(bearersTable(context)),
    ...[detectionSentence(context)].filter((text) => text !== undefined),
    ...(board.changesBasis === undefined ? [] : [`What would change the answer, ${board.changesBasis}:`]),
    ...board.changes,
    ...(board.estimate === undefined ? [] : [board.estimate]),
    ...board.failedChecks.map((check) => `Check not passed: ${check}`),
    "",
    method.standing,
  ].join("\n");
}

const textOf = (table: TableView | undefined): string => (table ? tableText(table) : "");
