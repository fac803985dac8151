import type { RevisionCard } from "../../store/records.js";

/** Revisions that one person saved without a long pause, the newest first. */
export interface Sitting {
  readonly author: string;
  readonly cards: readonly RevisionCard[];
}

/** A pause after which a person began anew. */
const pauseMinutes = 30;
const millisecondsInMinute = 60_000;

/** @param cards the newest first */
export function sittingsOf(cards: readonly RevisionCard[]): Sitting[] {
  const sittings: { author: string; cards: RevisionCard[] }[] = [];
  for (const card of cards) {
    const current = sittings.at(-1);
    const newer = current?.cards.at(-1);
    if (current && newer && isSame(newer, card)) current.cards.push(card);
    else sittings.push({ author: card.author, cards: [card] });
  }
  return sittings;
}

function isSame(newer: RevisionCard, older: RevisionCard): boolean {
  const pause = Date.parse(newer.savedAt) - Date.parse(older.savedAt);
  return newer.author === older.author && pause <= pauseMinutes * millisecondsInMinute;
}
