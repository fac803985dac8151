import { monthNames } from "../format/month-names.js";

/** The same place of two documents; a side that lacks it is undefined. */
interface Pair {
  /** The key, or in a list what names the item. */
  readonly key: string;
  readonly left: unknown;
  readonly right: unknown;
  readonly leftKey: PropertyKey | undefined;
  readonly rightKey: PropertyKey | undefined;
}

/** Keys that identify the items of a list, in order of preference. */
const namingKeys = ["id", "vesselClass", "part", "name", "group"] as const;

/**
 * The contents of two values in pairs; items of lists by name, in the order of the left list and then of the right.
 * Undefined for a single input: a figure, a text, a monthly table, a list of unnamed items, structures of different
 * kinds.
 */
export function pairsOf(left: unknown, right: unknown): Pair[] | undefined {
  if (Array.isArray(left) && Array.isArray(right)) return itemPairs(left, right);
  if (!isGroup(left) || !isGroup(right) || !isSameKind(left, right)) return undefined;
  const keys = new Set([...Object.keys(left), ...Object.keys(right)]);
  return [...keys].map((key) => ({
    key,
    left: Reflect.get(left, key),
    right: Reflect.get(right, key),
    leftKey: Object.hasOwn(left, key) ? key : undefined,
    rightKey: Object.hasOwn(right, key) ? key : undefined,
  }));
}

/** A quantity with its unit as written. */
export const isQuantity = (
  value: object,
): value is { readonly text: string | number; readonly value: number } =>
  "text" in value && "dimension" in value && "value" in value;

/** Values by month, or one for all. */
export const isByMonth = (value: object): boolean =>
  "all" in value || monthNames.every((name) => name in value);

function isGroup(value: unknown): value is object {
  return (
    typeof value === "object" &&
    value !== null &&
    !Array.isArray(value) &&
    !isQuantity(value) &&
    !isByMonth(value)
  );
}

const isSameKind = (left: object, right: object) =>
  ["kind", "by"].every((key) => Reflect.get(left, key) === Reflect.get(right, key));

function itemPairs(left: readonly unknown[], right: readonly unknown[]): Pair[] | undefined {
  const naming = namingKeys.find((key) => [left, right].every((list) => areNamed(list, key)));
  if (naming === undefined) return undefined;
  const nameOf = (item: unknown) => String(Reflect.get(Object(item), naming));
  const leftNames = left.map(nameOf);
  const rightNames = right.map(nameOf);
  return [...new Set([...leftNames, ...rightNames])].map((key) => {
    const [leftIndex, rightIndex] = [leftNames.indexOf(key), rightNames.indexOf(key)];
    return {
      key,
      left: left[leftIndex],
      right: right[rightIndex],
      leftKey: leftIndex < 0 ? undefined : leftIndex,
      rightKey: rightIndex < 0 ? undefined : rightIndex,
    };
  });
}

/** Whether each item has a unique name under that key. */
function areNamed(list: readonly unknown[], key: string): boolean {
  const names = list.map((item): unknown =>
    typeof item === "object" && item !== null ? Reflect.get(item, key) : undefined,
  );
  return names.every((name) => typeof name === "string") && new Set(names).size === names.length;
}
