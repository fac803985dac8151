import type { Field } from "./fields.js";
import type { Place } from "./study-text.js";

/** Values sent by a form, by input name: "lake/thermoclineDepth". */
export type Posted = Readonly<Record<string, string>>;

/** Suffix for the unit chosen beside a quantity. */
export const unitName = (name: string) => `${name}#unit`;

export const nameOf = (at: Place): string => at.map(String).join("/");

/** The input name of a place. */
export const placeOf = (name: string): Place =>
  name.split("/").map((key) => (/^\d+$/.test(key) ? Number(key) : key));

export const monthKeys = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** A plain value as shown in its input. */
export function shownText(value: unknown): string {
  if (value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(shownText).join(", ");
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

/** The way in which a value is given: as a group, or else the last, plain way. */
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
