import type { Spread, SpreadQuantity } from "../../units/spread.js";
import { asWritten } from "../format/as-written.js";
import type { StudyDocument } from "../format/schema.js";

/** A quantity given with a range. */
export interface RangedQuantity {
  /** Its place, by the ids of the enclosing groups: "structures/marina/wettedArea". */
  readonly id: string;
  readonly path: readonly PropertyKey[];
  readonly quantity: SpreadQuantity & { readonly spread: Spread };
}

/** All quantities with a range, in document order. */
export function rangedQuantities(document: StudyDocument): RangedQuantity[] {
  return rangedIn(asWritten(document), [], []);
}

export function rangedIn(
  value: unknown,
  path: readonly PropertyKey[],
  names: readonly string[],
): RangedQuantity[] {
  if (typeof value !== "object" || value === null) return [];
  if (isRanged(value)) return [{ id: names.join("/"), path, quantity: value }];
  if ("text" in value && "dimension" in value) return [];
  return Object.entries(value).flatMap(([key, item]: [string, unknown]) =>
    rangedIn(item, [...path, Array.isArray(value) ? Number(key) : key], [...names, nameOf(item) ?? key]),
  );
}

const isRanged = (value: object): value is RangedQuantity["quantity"] =>
  "spread" in value && value.spread !== undefined && "dimension" in value;

export function nameOf(item: unknown): string | undefined {
  if (typeof item !== "object" || item === null) return undefined;
  if ("id" in item && typeof item.id === "string") return item.id;
  return "name" in item && typeof item.name === "string" ? item.name : undefined;
}

/** A quantity in words, with the nearest name above it: "wetted area of Marina docks". */
export function quantityName(document: unknown, path: readonly PropertyKey[]): string {
  const { owner, words } = quantityWords(document, path);
  return owner === undefined ? words : `${words} of ${owner}`;
}

/** A quantity in words, and the nearest name above it. */
export function quantityWords(
  document: unknown,
  path: readonly PropertyKey[],
): { readonly owner: string | undefined; readonly words: string } {
  let owner: string | undefined;
  let words: string[] = [];
  let value = document;
  for (const key of path) {
    value = typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;
    const name = givenName(value);
    if (name !== undefined) [owner, words] = [name, []];
    else words.push(itemName(value) ?? String(key).replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`));
  }
  return { owner, words: words.join(", ") };
}

/** The identifying value of an unnamed item: "seals, resident, share of Full season". */
function itemName(value: unknown): string | undefined {
  const names = ["id", "vesselClass", "part"].map((key): unknown => Reflect.get(Object(value), key));
  return names.find((name) => typeof name === "string");
}

function givenName(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null || !("name" in value)) return undefined;
  return typeof value.name === "string" ? value.name : undefined;
}

/** The document with some values replaced; everything off their paths is shared. */
export function withValues<T>(
  document: T,
  values: ReadonlyArray<{ readonly path: readonly PropertyKey[]; readonly value: number }>,
): T {
  const copies = new Set<object>();
  const changed = { group: document };
  for (const { path, value } of values) {
    let quantity = ownCopy(changed, "group", copies);
    for (const key of path) quantity = ownCopy(quantity, key, copies);
    Reflect.set(quantity, "value", value);
  }
  return changed.group;
}

/** Puts a copy in the place of what a group has under a key, unless it is one already. */
function ownCopy(group: object, key: PropertyKey, copies: Set<object>): object {
  const known: unknown = Reflect.get(group, key);
  if (typeof known !== "object" || known === null) throw new Error(`no group at ${String(key)}`);
  if (copies.has(known)) return known;
  const copy = Array.isArray(known) ? [...known] : { ...known };
  copies.add(copy);
  Reflect.set(group, key, copy);
  return copy;
}
