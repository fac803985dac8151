import { type Reach, type Reached, reached } from "../../model/uncertainty/reach.js";
import type { Dimension } from "../../units/dimension.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import type { TypedId } from "./typed-kinds.js";

/** Where the numbers of the entries are read. */
export interface TypedEntries {
  readonly entries: ReadonlyMap<string, { readonly value: number }>;
}

const reachOf: Readonly<Record<TypedId, Reach>> = {
  "typed.count": "relative",
  "typed.price": "relative",
  "typed.dimension": "relative",
  "typed.flow": "relative",
  "typed.water": "relative",
  "typed.time": "relative",
  "typed.temperature": "absolute",
  "typed.share": "log-odds",
  "typed.effect": "log-odds",
  "typed.deterrence": "log-odds",
  "typed.chance": "log-odds",
};

/**
 * The range of a value by the number of its entry, kept within what its dimension allows.
 * @returns undefined where nothing is left to vary: 0, a whole, or an entry of 0
 */
export function typedRange(
  { id, value, dimension }: { id: TypedId; value: number; dimension: DimensionName },
  from: TypedEntries,
): Reached | undefined {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY }: Dimension =
    dimensions[dimension];
  const { low, high } = reached(reachOf[id], value, sizeOf(id, from));
  const kept = { low: Math.max(minimum, low), high: Math.min(maximum, high) };
  return kept.low < kept.high ? kept : undefined;
}

function sizeOf(id: TypedId, { entries }: TypedEntries): number {
  const entry = entries.get(id);
  if (!entry) throw new Error(`no assumption ${id}; allowed: those of the register`);
  return entry.value;
}

/** How far a quantity of a kind may be off: by a share of its value, in log odds, or by so many kelvins. */
export const typedReach = (
  id: TypedId,
  from: TypedEntries,
): { readonly reach: Reach; readonly size: number } => ({
  reach: reachOf[id],
  size: sizeOf(id, from),
});
