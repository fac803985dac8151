import { valueAt } from "../study/reading/problems.js";
import { itemsOf } from "./form-values.js";
import { withOverride } from "./override-edits.js";

/** A study's own value for an assumption, as typed. */
export interface OwnValue {
  readonly value: string;
  readonly reason: string;
}

/** Own values of a document in any state, by assumption id. */
export function ownValues(document: unknown): Map<string, OwnValue> {
  const found = new Map<string, OwnValue>();
  for (const item of itemsOf(valueAt(document, ["overrides"]))) {
    const id = valueAt(item, ["id"]);
    if (typeof id === "string")
      found.set(id, { value: textIn(item, "value"), reason: textIn(item, "reason") });
  }
  return found;
}

function textIn(item: unknown, key: string): string {
  const found = valueAt(item, [key]);
  return typeof found === "string" || typeof found === "number" ? String(found) : "";
}

/** Place of an assumption's own value in the overrides; after the last if there is none. */
export function ownValueIndex(document: unknown, id: string): number {
  const items = itemsOf(valueAt(document, ["overrides"]));
  const index = items.findIndex((item) => valueAt(item, ["id"]) === id);
  return index < 0 ? items.length : index;
}

/** The text with an own value as typed. @throws InputError if the text cannot be read */
export const withOwnValue = (text: string, name: string, id: string, { value, reason }: OwnValue): string =>
  withOverride(text, name, { id, value: asNumber(value), reason });

/** A number if written as one, so that the file needs no quotes. */
const asNumber = (value: string): string | number =>
  String(Number(value)) === value ? Number(value) : value;
