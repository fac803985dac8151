import { renderPage } from "../report/document/render-page.js";
import { isolateRightToLeft } from "../report/words/right-to-left.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { forXml } from "../study/reading/characters.js";
import { sheetContext } from "./sheet-context.js";
import type { Asked } from "./worked/setting.js";
import { type WorkedExamples, workable, workedExamples } from "./worked-example.js";

export type AskedSheet = Omit<Asked, "under">;

export interface WorkedSheets {
  /** Structures that have sheets. */
  readonly structures: ReadonlyArray<{ readonly id: string; readonly name: string }>;
  /** HTML. */
  readonly body: string;
}

/** Sheets of a study under the plans that its costs follow; of the first structure that has some if none is named. */
export function askedExamples(
  run: StudyRun,
  asked: AskedSheet,
): { readonly structures: WorkedSheets["structures"]; readonly worked: WorkedExamples } {
  const context = sheetContext(run);
  const structures = workable(context);
  const structure = asked.structure ?? structures[0]?.id;
  return { structures, worked: workedExamples(context, { ...asked, structure, under: "plan" }) };
}

/** The same as a part of a page. */
export function workedSheets(run: StudyRun, asked: AskedSheet): WorkedSheets {
  const { structures, worked } = askedExamples(run, asked);
  return { structures, body: forXml(isolateRightToLeft(renderPage("partials/worked-sheets", { worked }))) };
}
