import { childOf } from "./form-values.js";
import type { Edit, Place } from "./study-text.js";

/**
 * What a document would be with values changed, as one line of JSON: comments and order do not matter to a balance that
 * nobody keeps, and reading it takes a tenth of the time.
 */
export function triedText(document: unknown, edits: readonly Edit[]): string {
  // Aliases of a YAML text share their values; each place gets its own.
  const copy: unknown = JSON.parse(JSON.stringify(document));
  return JSON.stringify(edits.reduce((found, edit) => applied(found, edit.at, edit), copy));
}

function applied(holder: unknown, [key, ...rest]: Place, edit: Edit): unknown {
  if (key === undefined) return "value" in edit ? edit.value : holder;
  const items = typeof key === "number" ? [...(Array.isArray(holder) ? holder : [])] : undefined;
  if (items && typeof key === "number") {
    if (rest.length === 0 && !("value" in edit)) items.splice(key, 1);
    else items[key] = applied(items[key], rest, edit);
    return items;
  }
  const group = typeof holder === "object" && holder !== null && !Array.isArray(holder) ? holder : {};
  if (rest.length === 0 && "remove" in edit) {
    return Object.fromEntries(Object.entries(group).filter(([each]) => each !== key));
  }
  return { ...group, [key]: applied(childOf(group, key), rest, edit) };
}
