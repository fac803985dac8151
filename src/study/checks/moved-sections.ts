import { movedSections } from "../format/report-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { type Problem, pathText } from "../reading/problems.js";

const moved: ReadonlySet<string> = new Set(movedSections);

/** What became of fields of an earlier version, for the study's author. */
export function earlierNotes({ study }: StudyDocument): Problem[] {
  return study.fromEarlier.map((found, index) => ({
    path: `study.fromEarlier[${index}]`,
    at: ["study", "fromEarlier", index],
    found,
    allowed: "the terms of this version",
    remedy: "Check it, then remove the line.",
    unusual: true,
  }));
}

/** Sections that a study leaves out of its report and that no report has any more, for its author; they change nothing. */
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
