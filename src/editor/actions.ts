import { fieldAt } from "./field-at.js";
import type { Field, GroupField, KindsField } from "./fields.js";
import { childOf, itemsOf, monthKeys, placeOf, wayOf } from "./form-values.js";
import type { Edit, Place } from "./study-text.js";

/**
 * Edits requested by a form's button: "add:lake/storageTable", "remove:lake/storageTable/2", "up:…", "down:…", or
 * another way of giving a value, "way:structures/0/supply:gravity". @returns nothing for an impossible request
 */
export function editsOfAction(action: string, document: unknown): Edit[] {
  const [verb = "", name = "", way = ""] = action.split(":");
  const at = placeOf(name);
  const value = at.reduce<unknown>((found, key) => childOf(found, key), document);
  switch (verb) {
    case "add":
      return addTo(at, value, document);
    case "remove":
      return value === undefined ? [] : [{ at, remove: true }];
    case "up":
    case "down":
      return moved(at, verb === "up" ? -1 : 1, document);
    case "way":
      return otherWay(fieldAt(at, document), at, value, way);
    default:
      return [];
  }
}

function addTo(at: Place, value: unknown, document: unknown): Edit[] {
  const field = fieldAt(at, document);
  if (field?.kind === "list") {
    const items = itemsOf(value);
    return [{ at: [...at, items.length], value: newItem(field.item, String(at.at(-1)), items) }];
  }
  return field?.kind === "group" && value === undefined ? [{ at, value: {} }] : [];
}

/** An empty item, with an id of its own if its group has ids. */
function newItem(item: GroupField | KindsField, list: string, items: readonly unknown[]): object {
  const hasId = item.kind === "group" && item.fields.some(({ key }) => key === "id");
  return hasId ? { id: freeId(singular(list), items) } : {};
}

const singular = (list: string) =>
  list
    .replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
    .replace(/sses$/, "ss")
    .replace(/s$/, "");

/** An unused id, such as "dock-3". */
export const freeId = (stem: string, items: readonly unknown[]): string => freeIds(stem, items)();

/** Gives an unused id for each item that is added to some. */
export function freeIds(stem: string, items: readonly unknown[]): () => string {
  const taken = new Set(items.map((item) => childOf(item, "id")));
  let present = items.length;
  return () => {
    present += 1;
    let count = present;
    while (taken.has(`${stem}-${count}`)) count += 1;
    const id = `${stem}-${count}`;
    taken.add(id);
    return id;
  };
}

function moved(at: Place, by: number, document: unknown): Edit[] {
  const list = itemsOf(at.slice(0, -1).reduce<unknown>((found, key) => childOf(found, key), document));
  const moveTo = Number(at.at(-1)) + by;
  return moveTo >= 0 && moveTo < list.length ? [{ at, moveTo }] : [];
}

function otherWay(field: Field | undefined, at: Place, value: unknown, way: string): Edit[] {
  if (field?.kind === "kinds") return otherKind(field, at, value, way);
  if (field?.kind !== "either" || wayOf(field, value).value === way) return [];
  const wanted = field.ways.find((each) => each.value === way)?.field;
  if (wanted?.kind === "months") {
    const same = Object.fromEntries(monthKeys.map((key) => [key, value ?? ""]));
    return [{ at, value: value === undefined ? {} : same }];
  }
  if (wanted?.kind === "group" || wanted?.kind === "shares") return [{ at, value: {} }];
  return value === undefined ? [] : [{ at, remove: true }];
}

/** A changed kind keeps the fields that both kinds have. */
function otherKind({ by, ways }: KindsField, at: Place, value: unknown, way: string): Edit[] {
  const wanted = ways.find((each) => each.value === way);
  if (!wanted) return [];
  const kept = new Set([by, ...wanted.field.fields.map(({ key }) => key)]);
  const present = typeof value === "object" && value !== null ? Object.keys(value) : [];
  const removed = present
    .filter((key) => !kept.has(key))
    .map((key): Edit => ({ at: [...at, key], remove: true }));
  return [{ at: [...at, by], value: way }, ...removed];
}
