import { fieldAt, groupFieldsAt } from "./field-at.js";
import type { Field, GroupField, KindsField, NamedField } from "./fields.js";
import { childOf, itemsOf, monthKeys, placeOf, wayOf } from "./form-values.js";
import { waysAmong } from "./one-of.js";
import type { Edit, Place } from "./study-text.js";

/**
 * Edits requested by a form's button: "add:lake/storageTable", "remove:lake/storageTable/2", "up:…", "down:…", or
 * another way of giving a value, "way:structures/0/supply:gravity". @returns nothing for an impossible request
 * @param aside what was last at a place that another way took the place of
 */
export function editsOfAction(
  action: string,
  document: unknown,
  aside: (at: Place) => unknown = () => undefined,
): Edit[] {
  const [verb = "", name = "", way = ""] = action.split(":");
  const at = placeOf(name);
  const value = at.reduce<unknown>((found, key) => childOf(found, key), document);
  switch (verb) {
    case "add":
      return addTo(at, value, document);
    case "remove":
      return value === undefined ? [] : removed(at, document);
    case "up":
    case "down":
      return moved(at, verb === "up" ? -1 : 1, document);
    case "way": {
      const among = groupFieldsAt(at.slice(0, -1), document) ?? [];
      const isOneOf = among.some(({ key, way: own }) => key === at.at(-1) && own !== undefined);
      if (isOneOf) return otherFields(among, at.slice(0, -1), { way, document, aside });
      return otherWay(fieldAt(at, document), at, value, way);
    }
    default:
      return [];
  }
}

/** With its last row a list that may be left out goes too: an empty one says nothing. */
function removed(at: Place, document: unknown): Edit[] {
  const list = at.slice(0, -1);
  const rows = list.reduce<unknown>((found, key) => childOf(found, key), document);
  const isLast = typeof at.at(-1) === "number" && itemsOf(rows).length === 1;
  const named = groupFieldsAt(list.slice(0, -1), document)?.find(({ key }) => key === list.at(-1));
  return [{ at: isLast && named?.required === false ? list : at, remove: true }];
}

interface OneOf {
  /** Place of the wanted way among those of the group. */
  readonly way: string;
  readonly document: unknown;
  readonly aside: (at: Place) => unknown;
}

/** Fields of another way in place of those of the present one; what they held before comes back. */
function otherFields(fields: readonly NamedField[], at: Place, { way, document, aside }: OneOf): Edit[] {
  const value = at.reduce<unknown>((found, key) => childOf(found, key), document);
  const wanted = way === "" ? undefined : waysAmong(fields)[Number(way)];
  const present = fields.filter(
    ({ key, way: own }) => own !== undefined && childOf(value, key) !== undefined,
  );
  const others = present.filter(({ way: own }) => own !== wanted);
  const isThere = present.length > others.length;
  if (wanted === undefined || (isThere && others.length === 0)) return [];
  const removals = others.map(({ key }): Edit => ({ at: [...at, key], remove: true }));
  if (isThere) return removals;
  const own = fields.filter((each) => each.way === wanted);
  const kept = own.flatMap(({ key }) => {
    const before = aside([...at, key]);
    return before === undefined ? [] : [{ at: [...at, key], value: before }];
  });
  const [first] = own;
  const begun = first ? [{ at: [...at, first.key], value: emptyOf(first) }] : [];
  return [...removals, ...(kept.length > 0 ? kept : begun)];
}

function emptyOf({ field, key }: NamedField): unknown {
  if (field.kind === "list") return [newItem(field.item, key, [])];
  return field.kind === "group" ? {} : "";
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
