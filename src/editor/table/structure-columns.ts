import { unitsOffered, type Writing } from "../amounts/units-offered.js";
import { type Field, type GroupField, type NamedField, studyFields } from "../fields.js";
import { monthKeys } from "../form-values.js";
import type { Place } from "../study-text.js";

/** A column of a table of structures: a place within a structure. */
export interface Column {
  readonly at: Place;
  readonly field: Field;
  readonly required: boolean;
}

/** The kinds of structures and their fields. */
export function structureKindFields(): ReadonlyMap<string, GroupField> {
  const list = studyFields().fields.find(({ key }) => key === "structures")?.field;
  const ways = list?.kind === "list" && list.item.kind === "kinds" ? list.item.ways : [];
  return new Map(ways.map(({ value, field }) => [value, field]));
}

/** All columns possible for a kind. Lists have columns for their first item. */
export function columnsOf(kind: string): Column[] {
  const group = structureKindFields().get(kind);
  return group ? groupColumns(group.fields, [], true) : [];
}

function groupColumns(fields: readonly NamedField[], at: Place, required: boolean): Column[] {
  return fields.flatMap((named) => fieldColumns(named.field, [...at, named.key], required && named.required));
}

function fieldColumns(field: Field, at: Place, required: boolean): Column[] {
  switch (field.kind) {
    case "group":
      return groupColumns(field.fields, at, required);
    case "months":
      return monthKeys.map((key) => ({ at: [...at, key], field: field.each, required }));
    case "kinds":
      return [
        { at: [...at, field.by], field: { kind: "text", form: "line" }, required },
        ...distinct(field.ways.flatMap((way) => groupColumns(way.field.fields, at, false))),
      ];
    case "either": {
      const plain = field.ways.find((way) => isPlain(way.field));
      const months = field.ways.find((way) => way.field.kind === "months");
      return [
        ...(plain ? [{ at, field: plain.field, required }] : []),
        ...(months ? fieldColumns(months.field, at, false) : []),
      ];
    }
    case "list":
      return field.item.kind === "group" ? groupColumns(field.item.fields, [...at, 0], required) : [];
    case "shares":
      return [];
    default:
      return [{ at, field, required }];
  }
}

const isPlain = ({ kind }: Field) => !["group", "months", "shares", "list"].includes(kind);

const distinct = (columns: readonly Column[]) => [
  ...new Map(columns.map((column) => [column.at.join("/"), column])).values(),
];

/** A place in a structure as worded in a head, with list items counted from one. */
export const columnWords = (at: Place) =>
  at.map((key) => (typeof key === "number" ? String(key + 1) : spaced(key))).join(" ");

/** A template's head for a column: its words and the unit of its figures. */
export function headOf({ at, field }: Column, writing: Writing): string {
  const words = columnWords(at);
  const unit = field.kind === "quantity" ? (unitsOffered(field.dimension, writing)[0] ?? "") : "";
  return unit === "" ? words : `${words} (${unit})`;
}

const spaced = (key: string) =>
  key === "bearer" ? "who pays" : key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
