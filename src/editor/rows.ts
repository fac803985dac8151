import { namedThings } from "./choices.js";
import type { Field, ListField } from "./fields.js";
import { childOf, itemsOf, shownText } from "./form-values.js";
import { labelOf } from "./labels.js";
import { titleOf } from "./multiple-choice.js";

/** The title of a row: its name or id, its year, or else its first value. */
export function rowTitle(list: ListField, item: unknown, index: number, document: unknown): string {
  const own = shownText(childOf(item, "name")) || shownText(childOf(item, "id"));
  const other = list.byYear ? yearTitle(index, document) : firstValue(list, item, document);
  return own || other || `Row ${index + 1}`;
}

function yearTitle(index: number, document: unknown): string {
  const start = childOf(childOf(document, "money"), "startYear");
  return typeof start === "number" ? String(start + index) : `Year ${index + 1}`;
}

function firstValue({ item: group }: ListField, item: unknown, document: unknown): string {
  if (group.kind !== "group") return "";
  for (const { key, field } of group.fields) {
    const words = wordsOf(field, childOf(item, key), document);
    if (words !== "") return words;
  }
  return "";
}

/** A plain value as worded in its form; empty for a group. */
function wordsOf(field: Field, value: unknown, document: unknown): string {
  if (Array.isArray(value)) {
    const each = field.kind === "values" ? field.each : field;
    return itemsOf(value)
      .map((item) => wordsOf(each, item, document))
      .join(", ");
  }
  if (typeof value === "object") return "";
  const text = shownText(value);
  switch (field.kind) {
    case "choice":
    case "several":
      return text === "" ? "" : titleOf(field, text);
    case "reference":
      return namedThings(field.to, document).find(({ id }) => id === text)?.name ?? text;
    case "text":
      return field.form === "id" && text !== "" ? labelOf(text) : text;
    default:
      return text;
  }
}
