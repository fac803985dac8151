import { childOf, itemsOf, shownText } from "../form-values.js";
import type { Place } from "../study-text.js";

/** What an example has where another study has a field: in the first item of the same kind. Empty where it has nothing plain. */
export function exampleValue(examples: readonly unknown[], document: unknown, at: Place): string {
  for (const example of examples) {
    const found = valueLike(example, document, at);
    if (["string", "number"].includes(typeof found)) return shownText(found).slice(0, longest);
  }
  return "";
}

const longest = 60;

function valueLike(example: unknown, document: unknown, at: Place): unknown {
  let own = document;
  let found = example;
  for (const key of at) {
    own = childOf(own, key);
    found = typeof key === "number" ? itemLike(itemsOf(found), own, key) : childOf(found, key);
  }
  return found;
}

function itemLike(items: readonly unknown[], own: unknown, index: number): unknown {
  const kind = childOf(own, "kind");
  if (kind !== undefined) return items.find((each) => childOf(each, "kind") === kind);
  return items[index] ?? items[0];
}
