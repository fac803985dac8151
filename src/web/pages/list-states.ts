import type { Studies } from "../../app/studies.js";
import type { ListedStudy } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { partStateText, studyParts } from "../../editor/parts.js";
import { partName } from "../editing/edit-page.js";

/** What is missing in studies of a list; each revision is read once. */
export function listStates(studies: Studies): (card: ListedStudy) => string {
  const known = new Map<string, { readonly savedAt: string; readonly text: string }>();
  return ({ id, revision, savedAt, isDamaged }) => {
    if (isDamaged) return `Revision ${revision} is damaged. Open the study to go on from an earlier one.`;
    const before = known.get(id);
    if (before?.savedAt === savedAt) return before.text;
    const entry = studies.find(id);
    const text = entry ? missingIn(entry.text, entry.fileName) : "";
    known.set(id, { savedAt, text });
    return text;
  };
}

function missingIn(text: string, fileName: string): string {
  const { parts } = draftOf(text, fileName);
  const unfinished = studyParts.flatMap((part) => {
    const state = parts.get(part.id);
    return state && state.state !== "complete" ? [`${partName(part)}: ${partStateText(state)}`] : [];
  });
  return unfinished.length === 0 ? "" : `Not finished. ${unfinished.join("; ")}`;
}
