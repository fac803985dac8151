import { type Amount, amountOf, quantityText } from "./amounts/amount.js";
import { convertedAmount } from "./amounts/converted.js";
import type { UnitSystem, Writing } from "./amounts/units-offered.js";
import { dateOf, dayOfYear } from "./dates.js";
import type { Field, NamedField } from "./fields.js";
import {
  childOf,
  itemsOf,
  monthKeys,
  nameOf,
  type Posted,
  placeOf,
  shownText,
  unitName,
  wayOf,
} from "./form-values.js";
import { editsOfBoxes } from "./multiple-choice.js";
import type { Edit, Place } from "./study-text.js";

interface Base {
  readonly posted: Posted;
  readonly writing: Writing;
}

/** A form's edits to the document it was made from. Inputs not sent change nothing. */
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
    case "several":
      return editsOfBoxes(field, at, value, base.posted);
    default:
      return plainEdits(field, at, value, base);
  }
}

/** Monthly values, with one unit for all twelve. */
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
    const chosen = posted[unitName(name)] ?? "";
    const shown = amountOf(value, field.dimension, writing);
    if (typed === shown.amount && (typed === "" || chosen === shown.unit || isAsTyped(chosen, shown)))
      return [];
    const entered = enteredAmount({ amount: typed, unit: chosen }, shown);
    return changed(at, value, numeric(quantityText(entered, field.dimension)));
  }
  const entered = typed.replaceAll("\r\n", "\n");
  if (entered === shownText(value)) return [];
  return changed(at, value, entered === "" ? undefined : enteredValue(field, entered, writing.system));
}

/** "As typed" beside a number whose unit is known leaves it as it is. */
const isAsTyped = (chosen: string, shown: Amount) => chosen === "" && shown.unit !== "";

/** A number that stays while another unit is chosen is converted; one that is typed has the unit beside it. */
function enteredAmount(typed: Amount, shown: Amount): Amount {
  const unit = typed.unit === "" ? shown.unit : typed.unit;
  if (typed.amount !== shown.amount || shown.unit === "") return { ...typed, unit };
  return { amount: convertedAmount(typed.amount, shown.unit, unit) ?? typed.amount, unit };
}

/** A bare number, which only dimensions without units accept. */
const numeric = (text: string | undefined) =>
  text !== undefined && /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : text;

function changed(at: Place, before: unknown, value: unknown): Edit[] {
  if (value === undefined) return before === undefined ? [] : [{ at, remove: true }];
  return [{ at, value }];
}

export function enteredValue(field: Field, text: string, system: UnitSystem = "us"): unknown {
  switch (field.kind) {
    case "day-of-year":
      return dayOfYear(text, system) ?? text;
    case "date":
      return dateOf(text) ?? text;
    case "number":
      return numberOr(text);
    case "yes-no":
      return text === "true" ? true : text === "false" ? false : text;
    case "values":
      return text
        .split(/[;\n]/.test(text) ? /[;\n]|,(?=\s|$)/ : /,(?!\d{3}(?!\d))/)
        .map((each) => each.trim())
        .filter((each) => each !== "")
        .map((each) => (field.each.kind === "number" ? numberOr(each) : each));
    default:
      return text;
  }
}

/** A number as typed, or the text, to be refused later: "1,5" is no number, nor 1 and 5 between semicolons. */
function numberOr(text: string): number | string {
  const plain = text.trim().replace(/,(?=\d{3}(?!\d))/g, "");
  return /^[-+]?(\d+(?:\.\d*)?|\.\d+)([eE][-+]?\d+)?$/.test(plain) ? Number(plain) : text;
}
