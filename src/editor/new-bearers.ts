import { freeId } from "./actions.js";
import { childOf, itemsOf, type Posted, placeOf, shownText } from "./form-values.js";
import type { Edit } from "./study-text.js";

const prefix = "new:";
const longestName = 200;
const longestId = 60;

/** The input beside a list of who pays, in which another is named. */
export const newBearerName = (name: string): string => `${prefix}${name}`;

/** Who pays is made where it is needed: the edits that add those named, and that choose them. */
export function newBearerEdits(posted: Posted, document: unknown): Edit[] {
  const bearers = [...itemsOf(childOf(childOf(document, "money"), "bearers"))];
  return Object.entries(posted).flatMap(([input, typed]): Edit[] => {
    const name = typed.trim().slice(0, longestName);
    if (!input.startsWith(prefix) || name === "") return [];
    const at = placeOf(input.slice(prefix.length));
    const known = bearers.find((each) => shownText(childOf(each, "name")) === name);
    if (known !== undefined) return [{ at, value: childOf(known, "id") }];
    const bearer = { id: idFor(name, "bearer", bearers), name };
    bearers.push(bearer);
    return [
      { at: ["money", "bearers", bearers.length - 1], value: bearer },
      { at, value: bearer.id },
    ];
  });
}

/** An id made from a name that no other item has. */
export function idFor(name: string, stem: string, present: readonly unknown[]): string {
  const words = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, longestId)
    .replace(/^-+|-+$/g, "");
  const isFree = words !== "" && !present.some((item) => childOf(item, "id") === words);
  return isFree ? words : freeId(stem, present);
}
