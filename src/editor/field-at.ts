import { type Field, type NamedField, studyFields } from "./fields.js";
import { childOf, wayOf } from "./form-values.js";
import type { Place } from "./study-text.js";

/** The form field for a place in a document, if any, following the ways that the document uses. */
export function fieldAt(at: Place, document: unknown): Field | undefined {
  let field: Field | undefined = studyFields();
  let value = document;
  for (const key of at) {
    field = field && childField(field, key, value);
    value = childOf(value, key);
  }
  return field;
}

function childField(field: Field, key: string | number, value: unknown): Field | undefined {
  switch (field.kind) {
    case "group":
      return field.fields.find((each) => each.key === key)?.field;
    case "list":
      return typeof key === "number" ? field.item : undefined;
    case "kinds": {
      const way = field.ways.find((each) => each.value === childOf(value, field.by));
      return way && childField(way.field, key, value);
    }
    case "either":
      return childField(wayOf(field, value).field, key, value);
    case "months":
    case "shares":
      return field.each;
    default:
      return undefined;
  }
}

/** Fields of the group at a place, of the kind named there if there are kinds. */
export function groupFieldsAt(at: Place, document: unknown): readonly NamedField[] | undefined {
  const field = fieldAt(at, document);
  if (field?.kind === "group") return field.fields;
  if (field?.kind !== "kinds") return undefined;
  const value = at.reduce<unknown>((found, key) => childOf(found, key), document);
  return field.ways.find((way) => way.value === childOf(value, field.by))?.field.fields;
}
