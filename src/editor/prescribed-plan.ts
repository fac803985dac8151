import { valueAt } from "../study/reading/problems.js";
import { itemsOf, shownText } from "./form-values.js";
import { edited, rawOf } from "./study-text.js";

/** A plan that a study prescribes for a part of a structure. */
export interface PrescribedPlan {
  readonly plan: string;
  readonly reason: string;
}

interface PartOfStructure {
  readonly structure: string;
  readonly part: string;
}

/** Where a document prescribes a part's plan: after the last prescription if it does not. */
function placeIn(document: unknown, { structure, part }: PartOfStructure) {
  const structures = itemsOf(valueAt(document, ["structures"]));
  const index = structures.findIndex((item) => valueAt(item, ["id"]) === structure);
  if (index < 0) return undefined;
  const pinned = itemsOf(valueAt(structures[index], ["pinned"]));
  const found = pinned.findIndex((item) => valueAt(item, ["part"]) === part);
  return { list: ["structures", index, "pinned"] as const, found, count: pinned.length };
}

/** What a document in any state prescribes for a part. */
export function prescribedPlan(document: unknown, of: PartOfStructure): PrescribedPlan | undefined {
  const place = placeIn(document, of);
  if (!place || place.found < 0) return undefined;
  const item = valueAt(document, [...place.list, place.found]);
  return {
    plan: shownText(valueAt(item, ["plan"])),
    reason: shownText(valueAt(item, ["reason"])),
  };
}

/**
 * The text with a part's plan prescribed, or with none so that the cheapest is chosen. Without such a structure it is as
 * it was.
 * @throws InputError if the text cannot be read
 */
export function withPrescribedPlan(
  { text, fileName }: { readonly text: string; readonly fileName: string },
  of: PartOfStructure,
  wanted: PrescribedPlan | undefined,
): string {
  const place = placeIn(rawOf(text, fileName), of);
  if (!place) return text;
  const { list, found, count } = place;
  if (wanted) {
    const at = [...list, found < 0 ? count : found];
    return edited(text, [{ at, value: { part: of.part, ...wanted } }]);
  }
  if (found < 0) return text;
  return edited(text, [{ at: count === 1 ? [...list] : [...list, found], remove: true }]);
}
