import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import type { FormNode } from "../../editor/form-node.js";
import { childOf, shownText } from "../../editor/form-values.js";
import { isTakenOver } from "../../editor/marks/confirmed-edits.js";
import { type CopiedFrom, copiedFrom } from "../../editor/marks/copied-values.js";
import { DamagedRevisionError } from "../../store/errors.js";
import { placeByIds } from "../../study/reading/confirmed.js";
import { typicalKinds } from "../../study/short/typical-structure.js";
import type { EditPlace } from "./edit-page.js";

/** Name of a page among those that were taken over from an example. */
export const pageKey = ({ part, at }: EditPlace, document: unknown): string =>
  [part.id, ...(at.length > 1 ? [placeByIds(document, at)] : [])].join("/");

/** The example that a page still has values of, unless it was taken over as it is. */
export function copiedIn(
  studies: Pick<Studies, "revision">,
  entry: StudyEntry,
  place: EditPlace,
): CopiedFrom | undefined {
  const first = entry.isExample ? undefined : firstRevision(studies, entry.id);
  if (first?.origin !== "copy") return undefined;
  const { document } = draftOf(entry.text, entry.fileName);
  if (isTakenOver(document, pageKey(place, document))) return undefined;
  return copiedFrom(draftOf(first.text, first.fileName).document, true);
}

/** Whose example a page is still in part. */
export function copiedNote({ name }: CopiedFrom, nodes: readonly FormNode[], page: string) {
  const mark = `This was ${name}’s.`;
  const isFree = !isMarked(nodes, mark);
  return isFree ? undefined : { name, act: `ours:${page}` };
}

/** What is typical of a structure may stand for what it lacks. */
export function fillOf(document: unknown, { part, at }: EditPlace) {
  if (part.id !== "structures" || at.length < 2) return undefined;
  return typicalKinds.includes(
    shownText(childOf(childOf(childOf(document, "structures"), Number(at[1])), "kind")),
  )
    ? `typical:${at[1]}`
    : undefined;
}

const isMarked = (nodes: readonly FormNode[], mark: string): boolean =>
  nodes.some(({ needed, children }) => needed.includes(mark) || isMarked(children, mark));

/** A damaged one marks nothing. */
function firstRevision(studies: Pick<Studies, "revision">, id: string): StudyEntry | undefined {
  try {
    return studies.revision(id, 1);
  } catch (error) {
    if (error instanceof DamagedRevisionError) return undefined;
    throw error;
  }
}
