import { confirmationOf } from "../../study/reading/confirmed.js";
import type { Problem } from "../../study/reading/problems.js";
import { childOf, itemsOf, nameOf } from "../form-values.js";
import type { Edit, Place } from "../study-text.js";

const list: Place = ["study", "confirmed"];

const confirmedIn = (document: unknown): readonly unknown[] =>
  itemsOf(list.reduce<unknown>((found, key) => childOf(found, key), document));

/** Confirms what is unusual at a place. @param name of the place's input */
export function confirmEdits(document: unknown, name: string, unusual: readonly Problem[]): Edit[] {
  const confirmed = confirmedIn(document);
  const added = unusual
    .filter(({ at }) => `${nameOf((at ?? []).map(keyOf))}/`.startsWith(`${name}/`))
    .map((problem) => confirmationOf(problem, document));
  return added.map((value, index) => ({ at: [...list, confirmed.length + index], value }));
}

const keyOf = (key: PropertyKey) => (typeof key === "number" ? key : String(key));

/** What stands for a page in the list, once its copied values were taken over. */
const asCopied = "as copied";

export const isTakenOver = (document: unknown, page: string): boolean =>
  confirmedIn(document).some(
    (each) => childOf(each, "place") === page && childOf(each, "found") === asCopied,
  );

/** Takes over what a page has from the example that the study was copied from. */
export const takeOverEdits = (document: unknown, page: string): Edit[] =>
  isTakenOver(document, page)
    ? []
    : [{ at: [...list, confirmedIn(document).length], value: { place: page, found: asCopied } }];
