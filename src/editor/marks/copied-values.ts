import { placeName } from "../../study/short/typical-value.js";
import { childOf, itemsOf, shownText } from "../form-values.js";
import type { Place } from "../study-text.js";

/** What a study was copied from, if that was an invented example. */
export interface CopiedFrom {
  /** Of its lake. */
  readonly name: string;
  readonly document: unknown;
}

/** @param first the study's first revision as it was read; @param isCopy whether it is a copy of another study */
export function copiedFrom(first: unknown, isCopy: boolean): CopiedFrom | undefined {
  const isInvented = childOf(childOf(first, "study"), "invented") === true;
  const name = shownText(childOf(childOf(first, "lake"), "name"));
  return isCopy && isInvented && name !== "" ? { name, document: first } : undefined;
}

/** Keys that say what a thing is, and not how large. */
const namesOfThings = new Set(["id", "kind"]);

/** Whether a value is as the example had it, in the item of the same id. */
export function isAsCopied({ document: first }: CopiedFrom, document: unknown, at: Place): boolean {
  if (namesOfThings.has(String(at.at(-1)))) return false;
  let now = document;
  let then: unknown = first;
  for (const key of at) {
    const item = childOf(now, key);
    then = typeof key === "number" ? sameItem(then, item, key) : childOf(then, key);
    now = item;
    if (then === undefined || now === undefined) return false;
  }
  return JSON.stringify(now) === JSON.stringify(then);
}

function sameItem(list: unknown, item: unknown, index: number): unknown {
  const id = placeName(item);
  const items = itemsOf(list);
  return id === undefined ? items[index] : items.find((each) => placeName(each) === id);
}
