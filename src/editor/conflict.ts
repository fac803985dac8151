import { counted } from "../counted.js";
import { childOf, nameOf, type Posted, shownText } from "./form-values.js";
import type { Edit, Place } from "./study-text.js";

/** A place changed by one or both of two writers, with its earlier value. */
export interface Clash {
  readonly at: Place;
  readonly before: string;
  readonly theirs: string;
  readonly mine: string;
  /** True if both changed it differently: one must be chosen. */
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
 * Places that my changes touch. If the other writer changed the rows of a list around a place, the whole list is the
 * place, as its rows may have moved.
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
    return { at, before: comparedText(base), theirs: comparedText(theirs), mine: comparedText(mine), both };
  });
}

/** The outermost list on the way to a place whose rows have changed; items of whole sections go by id. */
function movedList(at: Place, { base, theirs }: ThreeDocuments): Place | undefined {
  for (let length = 1; length < at.length; length += 1) {
    const way = at.slice(0, length);
    const [before, now] = [valueIn(base, way), valueIn(theirs, way)];
    if (Array.isArray(before) && !(Array.isArray(now) && before.length === now.length)) return way;
  }
  return undefined;
}

/** A value in words; for a list its size, to distinguish two lists. */
function comparedText(value: unknown): string {
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

/** My values at the places decided for me, to be set in the other writer's text. */
export function chosenEdits(found: readonly Clash[], posted: Posted, mine: unknown): Edit[] {
  return found
    .filter(({ at, both }) => !both || posted[`choice:${nameOf(at)}`] === "mine")
    .map(({ at }): Edit => {
      const value = valueIn(mine, at);
      return value === undefined ? { at, remove: true } : { at, value };
    });
}

/** Whether every conflicting place has been decided. */
export const isChosen = (found: readonly Clash[], posted: Posted): boolean =>
  found.every(({ at, both }) => !both || posted[`choice:${nameOf(at)}`] !== undefined);

/** Whether an item's page still shows the same item; a changed list may have moved it. */
export function sameItem(at: Place, base: unknown, theirs: unknown): boolean {
  if (at.length < 2) return true;
  const idOf = (document: unknown) => childOf(valueIn(document, at), "id");
  return idOf(base) === idOf(theirs) && valueIn(theirs, at) !== undefined;
}
