import { type ReportContext, reportContext } from "../report/document/context.js";
import type { StudyRun } from "../study/prepare/compute.js";

/** Sheets name assumptions by their ids, since numbers are those of a report's appendix. */
export function sheetContext(run: StudyRun): ReportContext {
  const own = new Set(run.overrides.map(({ entry }) => entry.id));
  return {
    ...reportContext(run),
    assumptionNumber: (id) => (own.has(id) ? `${id} (the study's own value)` : id),
  };
}
