import type { SpreadQuantity } from "../../units/spread.js";
import { nameOf } from "../reading/ranged.js";

/** A quantity given as one value, exact or not. */
interface SingleValue {
  readonly path: readonly PropertyKey[];
  readonly names: readonly string[];
  readonly quantity: SpreadQuantity;
}

/** All of them, in document order. */
export function singleValues(
  value: unknown,
  path: readonly PropertyKey[],
  names: readonly string[],
): SingleValue[] {
  if (typeof value !== "object" || value === null) return [];
  if (isQuantity(value)) {
    return value.spread === undefined ? [{ path, names, quantity: value }] : [];
  }
  return Object.entries(value).flatMap(([key, item]: [string, unknown]) =>
    singleValues(item, [...path, Array.isArray(value) ? Number(key) : key], [...names, nameOf(item) ?? key]),
  );
}

export const isQuantity = (value: object): value is SpreadQuantity => "text" in value && "dimension" in value;
