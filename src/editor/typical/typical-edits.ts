import { type TypicalPlace, typicalPlacesIn, withoutEdited } from "../../study/short/typical-places.js";
import { placeName } from "../../study/short/typical-value.js";
import { childOf, itemsOf } from "../form-values.js";
import type { Edit, Place } from "../study-text.js";

const at: Place = ["study", "typical"];

/** The places that a document lists as typical, with the ids of the assumptions they come from. */
export function listedIn(document: unknown): Record<string, string> {
  const listed = at.reduce<unknown>((found, key) => childOf(found, key), document);
  if (typeof listed !== "object" || listed === null || Array.isArray(listed)) return {};
  return Object.fromEntries(
    Object.entries(listed).flatMap(([place, entry]: [string, unknown]) =>
      typeof entry === "string" ? [[place, entry] as const] : [],
    ),
  );
}

/** The typical values of a document that are there. */
export const typicalIn = (document: unknown): TypicalPlace[] => typicalPlacesIn(document, listedIn(document));

/**
 * What others edit is the author's own from then on: the edits that take it off the list of typical values, and that keep
 * the others of a structure on it whose id changes.
 * @param document before the edits
 */
export function typicalEdits(document: unknown, edits: readonly Edit[]): Edit[] {
  const before = listedIn(document);
  if (Object.keys(before).length === 0) return [];
  const kept = withoutEdited(
    document,
    before,
    edits.map((edit) => placeEdited(document, edit)),
  );
  const listed = edits.reduce((found, edit) => renamed(found, document, edit), kept);
  const same = Object.keys(listed).length === Object.keys(before).length;
  if (same && Object.keys(listed).every((place) => Object.hasOwn(before, place))) return [];
  return Object.keys(listed).length === 0 ? [{ at, remove: true }] : [{ at, value: listed }];
}

/** Rows without ids are known by their numbers: where one goes or moves, what was said of all of them is left. */
function placeEdited(document: unknown, edit: Edit): Place {
  if ("value" in edit || typeof edit.at.at(-1) !== "number") return edit.at;
  const list = edit.at.slice(0, -1);
  const items = itemsOf(list.reduce<unknown>((found, key) => childOf(found, key), document));
  const item = items[Number(edit.at.at(-1))];
  if (placeName(item) === undefined) return list;
  return "remove" in edit ? edit.at : [...edit.at, "moved"];
}

function renamed(listed: Record<string, string>, document: unknown, edit: Edit): Record<string, string> {
  if (!("value" in edit) || edit.at.at(-1) !== "id" || typeof edit.value !== "string") return listed;
  const item = edit.at.slice(0, -1).reduce<unknown>((found, key) => childOf(found, key), document);
  const name = placeName(item);
  if (name === undefined) return listed;
  const before = `${String(edit.at[0])}/${name}/`;
  const after = `${String(edit.at[0])}/${edit.value}/`;
  return Object.fromEntries(
    Object.entries(listed).map(([place, entry]) => [
      place.startsWith(before) ? after + place.slice(before.length) : place,
      entry,
    ]),
  );
}
