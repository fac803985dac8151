import type { Studies } from "../../app/studies.js";
import type { ListedStudy } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { standingText, studyParts } from "../../editor/parts.js";
import { partName } from "./edit-page.js";

/** What is missing in studies of a list; each revision is read once. */
export function listStandings(studies: Studies): (card: ListedStudy) => string {
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
  const told = studyParts.flatMap((part) => {
    const standing = parts.get(part.id);
    return standing && standing.state !== "complete" ? [`${partName(part)}: ${standingText(standing)}`] : [];
  });
  return told.length === 0 ? "" : `Not finished. ${told.join("; ")}`;
}
