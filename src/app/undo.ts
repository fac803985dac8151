import type { RevisionCard } from "../store/records.js";

/** A step back or forth keeps an earlier text again as a new revision, which its note says. */
const stepNote = /^(Undone|Redone): as revision (\d+) was$/;

export const undoneNote = (revision: number) => `Undone: as revision ${revision} was`;
export const redoneNote = (revision: number) => `Redone: as revision ${revision} was`;

/** Whether a revision was made by a step back or forth. */
export const isStep = ({ note, origin }: Pick<RevisionCard, "note" | "origin">): boolean =>
  origin === "restore" && stepNote.test(note);

type Card = Pick<RevisionCard, "revision" | "note" | "origin">;

interface Steps {
  /** The revision that undoing the last edit leads back to; absent at the first. */
  readonly undo: number | undefined;
  /** The revision that redoing leads to; absent where nothing was undone since the last edit. */
  readonly redo: number | undefined;
}

/**
 * Steps back lead along the edits that a revision rests on, steps forth to the last edit: whoever edits after a step back
 * begins a new line. @param cards the newest first
 */
export function stepsFrom(cards: readonly Card[]): Steps {
  const edits = new Map<number, number>();
  for (const card of [...cards].reverse()) edits.set(card.revision, editBehind(card, edits));
  const before = (edit: number) => edits.get(edit - 1);
  const now = edits.get(cards[0]?.revision ?? 0);
  const lastEdit = cards.find((card) => !isStep(card))?.revision;
  if (now === undefined || lastEdit === undefined) return { undo: undefined, redo: undefined };
  return { undo: now > 1 ? now - 1 : undefined, redo: nextOnWay(lastEdit, now, before) };
}

/** The edit whose text a revision shows. */
function editBehind(card: Card, edits: ReadonlyMap<number, number>): number {
  const shown = isStep(card) ? Number(stepNote.exec(card.note)?.[2]) : card.revision;
  return edits.get(shown) ?? shown;
}

function nextOnWay(
  last: number,
  now: number,
  before: (edit: number) => number | undefined,
): number | undefined {
  for (let edit: number | undefined = last; edit !== undefined && edit > now; edit = before(edit)) {
    if (before(edit) === now) return edit;
  }
  return undefined;
}
