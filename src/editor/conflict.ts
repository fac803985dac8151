import { counted } from "../counted.js";
import { childOf, nameOf, type Posted, shownText } from "./form-values.js";
import type { Edit, Place } from "./study-text.js";

/** A place that one of two writers changed, or both, with what stood there before. */
export interface Clash {
  readonly at: Place;
  readonly before: string;
  readonly theirs: string;
  readonly mine: string;
  /** Both changed it, otherwise: one has to be chosen. */
  readonly both: boolean;
}

interface ThreeDocuments {
  readonly base: unknown;
  readonly theirs: unknown;
  readonly mine: unknown;
}

const valueIn = (document: unknown, at: Place) =>
  at.reduce<unknown>((found, key) => childOf(found, key), document);

const same = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);

/**
 * The places that my changes touch. Where the other writer changed a list around a place, the list as a whole is the
 * place: its rows may no longer be the same ones.
 */
export function clashes(edits: readonly Edit[], documents: ThreeDocuments): Clash[] {
  const places = new Map(
    edits.map(({ at }) => {
      const place = movedList(at, documents) ?? at;
      return [nameOf(place), place];
    }),
  );
  return [...places.values()].map((at) => {
    const { base, theirs, mine } = {
      base: valueIn(documents.base, at),
      theirs: valueIn(documents.theirs, at),
      mine: valueIn(documents.mine, at),
    };
    const both = !same(base, theirs) && !same(theirs, mine);
    return { at, before: told(base), theirs: told(theirs), mine: told(mine), both };
  });
}

/** The outermost list on the way to a place that has other rows now; items of whole sections are told by their id. */
function movedList(at: Place, { base, theirs }: ThreeDocuments): Place | undefined {
  for (let length = 1; length < at.length; length += 1) {
    const way = at.slice(0, length);
    const [before, now] = [valueIn(base, way), valueIn(theirs, way)];
    if (Array.isArray(before) && !(Array.isArray(now) && before.length === now.length)) return way;
  }
  return undefined;
}

/** A value in words; of a list its size, so that two lists can be told apart by it. */
function told(value: unknown): string {
  if (value === undefined) return "nothing";
  if (Array.isArray(value) && value.some((item) => typeof item === "object")) {
    const rows = counted(value.length, "row");
    return `${rows}: ${value.map(rowText).join("; ")}`;
  }
  return typeof value === "object" && value !== null ? rowText(value) : shownText(value);
}

const rowText = (value: unknown): string =>
  typeof value === "object" && value !== null
    ? Object.values(value).map(shownText).join(", ")
    : shownText(value);

/** My values at the places that were chosen to be mine, to be set on the other writer's text. */
export function chosenEdits(found: readonly Clash[], posted: Posted, mine: unknown): Edit[] {
  return found
    .filter(({ at, both }) => !both || posted[`choice:${nameOf(at)}`] === "mine")
    .map(({ at }): Edit => {
      const value = valueIn(mine, at);
      return value === undefined ? { at, remove: true } : { at, value };
    });
}

/** Whether every place that both changed has been chosen for. */
export const isChosen = (found: readonly Clash[], posted: Posted): boolean =>
  found.every(({ at, both }) => !both || posted[`choice:${nameOf(at)}`] !== undefined);

/** A page of an item of a list is of another item if the list was changed around it. */
export function sameItem(at: Place, base: unknown, theirs: unknown): boolean {
  if (at.length < 2) return true;
  const idOf = (document: unknown) => childOf(valueIn(document, at), "id");
  return idOf(base) === idOf(theirs) && valueIn(theirs, at) !== undefined;
}
