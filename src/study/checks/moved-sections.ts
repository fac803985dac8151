import { movedSections } from "../format/report-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { type Problem, pathText } from "../reading/problems.js";

const moved: ReadonlySet<string> = new Set(movedSections);

/** Notes for the author on omitted sections that no report has any more; they change nothing. */
export function movedSectionNotes(document: StudyDocument): Problem[] {
  return document.report.leaveOut.flatMap((section, index) => {
    if (!moved.has(section)) return [];
    const at = ["report", "leaveOut", index];
    return [
      {
        path: pathText(at, document),
        at,
        found: `"${section}", which is in the method document now`,
        allowed: "a section that reports have",
        remedy: "It is ignored, and may stay or go.",
        unusual: true,
      },
    ];
  });
}
