import type { Field } from "./fields.js";
import type { Place } from "./study-text.js";

/** Values as a form sends them, by the name of the input: "lake/thermoclineDepth". */
export type Posted = Readonly<Record<string, string>>;

/** Beside the name of a quantity: the unit chosen for it. */
export const unitName = (name: string) => `${name}#unit`;

export const nameOf = (at: Place): string => at.map(String).join("/");

/** A place by the name of its input. */
export const placeOf = (name: string): Place =>
  name.split("/").map((key) => (/^\d+$/.test(key) ? Number(key) : key));

export const monthKeys = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

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
