import { writeXlsx } from "hucre/xlsx";
import { boardView } from "../../report/board/board-view.js";
import { reportContext } from "../../report/document/context.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { forXml } from "../../study/reading/characters.js";
import { answerRows, answerSheet } from "./answer-sheet.js";
import { assumptionSheet, overrideSheet } from "./assumption-sheets.js";
import { breakEvenSheet } from "./break-even-sheet.js";
import { budgetAmounts } from "./budget-amounts.js";
import { budgetSheet } from "./budget-sheet.js";
import { linkedCourses } from "./courses.js";
import { requestSheets } from "./request-sheets.js";
import { sheetOf } from "./sheet.js";

/**
 * The comparison as a workbook (.xlsx) that follows its inputs: chances, courses, program lines, unit rates and discount
 * rate lead by formulas to the answer. What the program alone can compute stands in it as values of another colour.
 */
export async function workbook(run: StudyRun, odds?: Odds): Promise<Uint8Array> {
  const context = reportContext(run, odds);
  const assumptions = assumptionSheet(context);
  const linked = linkedCourses(context, assumptions);
  const { inputs, program, yearly, requested, baseline } = linked;
  const id = requested.result.option.id;
  const own = linked.optionInputs(id);
  const budget = budgetSheet(context, budgetAmounts(context, own.program, program.of(id)), {
    clock: yearly.clock,
    money: linked.money,
    inputs: own.works,
  });
  const breakEven = breakEvenSheet([baseline, requested], context);
  const answers = {
    options: linked.cells,
    program,
    infestationSum: linked.infestationSum,
    breakEven: breakEven?.chance,
    schedulePresentValue: requested.schedulePresentValue,
  };
  const figures = answerRows(context, answers).map(inputs.answer);
  const drafts = [
    answerSheet(context, boardView(context), { options: linked.cells, figures }),
    inputs.draft(),
    yearly.draft(),
    program.draft,
    ...linked.lines.flatMap(({ drafts }) => drafts()),
    ...linked.courses.map(({ draft }) => draft),
    ...(linked.chances ? [linked.chances.draft] : []),
    ...(breakEven ? [breakEven.draft] : []),
    ...(budget ? [budget.draft] : []),
    ...requestSheets(context, { budget, staff: own.program.staff }),
    assumptions.draft,
    overrideSheet(context, assumptions),
  ];
  const { name, preparedBy } = run.document.study;
  return writeXlsx({
    sheets: drafts.map(sheetOf),
    properties: { title: forXml(name), creator: forXml(preparedBy) },
  });
}
