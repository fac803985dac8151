import { writeXlsx } from "hucre/xlsx";
import { boardView } from "../../report/board/board-view.js";
import { reportContext } from "../../report/document/context.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { forXml } from "../../study/reading/characters.js";
import { answerSheet } from "./answer-sheet.js";
import { assumptionSheet, overrideSheet } from "./assumption-sheets.js";
import { budgetSheet } from "./budget-sheet.js";
import { infestationSheet } from "./infestation-sheet.js";
import { programSheet } from "./program-sheet.js";
import { requestSheets } from "./request-sheets.js";
import { sheetOf } from "./sheet.js";
import { yearlySheet } from "./yearly-sheet.js";

/** The comparison as a workbook (.xlsx) whose sums, products and present values are formulas. */
export async function workbook(run: StudyRun, odds?: Odds): Promise<Uint8Array> {
  const context = reportContext(run, odds);
  const yearly = yearlySheet(context);
  const program = programSheet(context);
  const infestation = infestationSheet(context);
  const linked = { yearly, program, infestationSum: infestation.sum };
  const budget = budgetSheet(context);
  const drafts = [
    answerSheet(context, boardView(context), linked),
    yearly.draft,
    program.draft,
    infestation.draft,
    ...(budget ? [budget] : []),
    ...requestSheets(context),
    assumptionSheet(context),
    overrideSheet(context),
  ];
  const { name, preparedBy } = run.document.study;
  return writeXlsx({
    sheets: drafts.map(sheetOf),
    properties: { title: forXml(name), creator: forXml(preparedBy) },
  });
}
