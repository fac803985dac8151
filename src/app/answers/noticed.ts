import { unusualEntries } from "../../report/document/check-rows.js";
import { habitatNotes } from "../../report/rack/habitat-doubt.js";
import { studyNotes } from "../../study/checks/study-notes.js";
import type { ComparedRun } from "../../study/compared/compared.js";
import { isConfirmed } from "../../study/reading/confirmed.js";
import type { Problem } from "../../study/reading/problems.js";

/** What is unusual of a study that can be computed, and what of it its author found right. */
export function noticedIn(run: ComparedRun): Record<"confirmed" | "unusual", readonly Problem[]> {
  const { document, assumptions } = run;
  const all = [...unusualEntries(run), ...habitatNotes(run), ...studyNotes(document, assumptions)];
  const isKnown = (each: Problem) => isConfirmed(each, document, document.study.confirmed);
  return { confirmed: all.filter(isKnown), unusual: all.filter((each) => !isKnown(each)) };
}
