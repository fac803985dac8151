import { amountOf, quantityText } from "./amount.js";
import type { Field, NamedField } from "./fields.js";
import type { Edit, Place } from "./study-text.js";
import type { Writing } from "./units-offered.js";

/** Values as a form sends them, by the name of the input: "lake/thermoclineDepth". */
export type Posted = Readonly<Record<string, string>>;

/** Beside the name of a quantity: the unit chosen for it. */
export const unitName = (name: string) => `${name}#unit`;

export const nameOf = (at: Place): string => at.map(String).join("/");

/** A place by the name of its input. */
export const placeOf = (name: string): Place =>
  name.split("/").map((key) => (/^\d+$/.test(key) ? Number(key) : key));

interface Base {
  readonly posted: Posted;
  readonly writing: Writing;
}

/** What a form changes against the document that it was made from. Inputs that were not sent change nothing. */
export function editsOf(fields: readonly NamedField[], at: Place, value: unknown, base: Base): Edit[] {
  return fields.flatMap(({ key, field }) => editsAt(field, [...at, key], childOf(value, key), base));
}

function editsAt(field: Field, at: Place, value: unknown, base: Base): Edit[] {
  switch (field.kind) {
    case "group":
      return editsOf(field.fields, at, value, base);
    case "list":
      return itemsOf(value).flatMap((item, index) => editsAt(field.item, [...at, index], item, base));
    case "months":
      return monthKeys.flatMap((key) =>
        editsAt(field.each, [...at, key], childOf(value, key), shared(at, base)),
      );
    case "kinds": {
      const way = field.ways.find((each) => each.value === childOf(value, field.by));
      return way ? editsAt(way.field, at, value, base) : [];
    }
    case "either":
      return editsAt(wayOf(field, value).field, at, value, base);
    case "shares":
      return Object.keys(base.posted)
        .filter((name) => name.startsWith(`${nameOf(at)}/`) && !name.includes("#"))
        .flatMap((name) => {
          const place = placeOf(name).slice(0, at.length + 1);
          return editsAt(field.each, place, childOf(value, String(place.at(-1))), base);
        });
    default:
      return plainEdits(field, at, value, base);
  }
}

export const monthKeys = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** Months have one unit for all twelve. */
function shared(at: Place, { posted, writing }: Base): Base {
  const unit = posted[unitName(nameOf(at))];
  if (unit === undefined) return { posted, writing };
  const units = Object.fromEntries(monthKeys.map((key) => [unitName(nameOf([...at, key])), unit]));
  return { posted: { ...posted, ...units }, writing };
}

function plainEdits(field: Field, at: Place, value: unknown, { posted, writing }: Base): Edit[] {
  const name = nameOf(at);
  const typed = posted[name];
  if (typed === undefined) return [];
  if (field.kind === "quantity") {
    const unit = posted[unitName(name)] ?? "";
    const shown = amountOf(value, field.dimension, writing);
    if (typed === shown.amount && (typed === "" || unit === shown.unit)) return [];
    return changed(at, value, numeric(quantityText({ amount: typed, unit }, field.dimension)));
  }
  const entered = typed.replaceAll("\r\n", "\n");
  if (entered === shownText(value)) return [];
  return changed(at, value, entered === "" ? undefined : enteredValue(field, entered));
}

/** Only dimensions without a unit take a bare number: written as one. */
const numeric = (text: string | undefined) =>
  text !== undefined && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;

function changed(at: Place, before: unknown, value: unknown): Edit[] {
  if (value === undefined) return before === undefined ? [] : [{ at, remove: true }];
  return [{ at, value }];
}

export function enteredValue(field: Field, text: string): unknown {
  switch (field.kind) {
    case "number":
      return numberOr(text);
    case "yes-no":
      return text === "true" ? true : text === "false" ? false : text;
    case "values":
      return text
        .split(/[;\n]|,(?!\d{3}(?!\d))/)
        .map((each) => each.trim())
        .filter((each) => each !== "")
        .map((each) => (field.each.kind === "number" ? numberOr(each) : each));
    default:
      return text;
  }
}

/** A number as its author typed it, or the text for the reader of the study to refuse. */
function numberOr(text: string): number | string {
  const plain = text.trim().replace(/,(?=\d{3}(?!\d))/g, "");
  return /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?$/.test(plain) ? Number(plain) : text;
}

/** A plain value as its input shows it. */
export function shownText(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(shownText).join(", ");
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

/** The way in which a value is given: as a group if it is one, else the last, plain way. */
export function wayOf({ ways }: Extract<Field, { kind: "either" }>, value: unknown) {
  const isGroup = typeof value === "object" && value !== null;
  const found = isGroup
    ? ways.find(({ field }) => isGrouped(field))
    : ways.find(({ field }) => !isGrouped(field));
  const [first] = ways;
  if (!first) throw new Error("a field without ways");
  return found ?? first;
}

const isGrouped = ({ kind }: Field) => kind === "group" || kind === "months" || kind === "shares";

export const childOf = (value: unknown, key: string | number): unknown =>
  typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? Reflect.get(value, key)
    : undefined;

export const itemsOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
