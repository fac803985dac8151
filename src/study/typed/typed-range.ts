import { type Dimension, type DimensionName, dimensions } from "../../units/dimensions.js";
import type { TypedId } from "./typed-kinds.js";

/** Between which values a quantity is taken to lie. */
export interface TypedRange {
  readonly low: number;
  readonly high: number;
}

/** Where the numbers of the entries are read. */
export interface TypedEntries {
  readonly entries: ReadonlyMap<string, { readonly value: number }>;
}

/** How the number of an entry makes a range of a value. */
export type Reach = "relative" | "log-odds" | "absolute";

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
 * The range of a value x by the number s of its entry: x (1 ± s); for shares the share whose log odds are s below and
 * above, ln(p/(1−p)) ± s, which stays within 0 and 1; for temperatures x ± s. Kept within what its dimension allows.
 * @returns undefined where nothing is left to vary: 0, a whole, or an entry of 0
 */
export function typedRange(
  { id, value, dimension }: { id: TypedId; value: number; dimension: DimensionName },
  from: TypedEntries,
): TypedRange | undefined {
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

function reached(reach: Reach, value: number, size: number): TypedRange {
  switch (reach) {
    case "relative":
      return { low: value * (1 - size), high: value * (1 + size) };
    case "absolute":
      return { low: value - size, high: value + size };
    case "log-odds":
      return { low: oddsMoved(value, Math.exp(-size)), high: oddsMoved(value, Math.exp(size)) };
  }
}

/** A share whose odds are multiplied. */
const oddsMoved = (share: number, by: number) => (share * by) / (1 - share + share * by);

/** How far a quantity of a kind may be off: by a share of its value, in log odds, or by so many kelvins. */
export const typedReach = (
  id: TypedId,
  from: TypedEntries,
): { readonly reach: Reach; readonly size: number } => ({
  reach: reachOf[id],
  size: sizeOf(id, from),
});

/** The value at a place in its range: −1 at its low, 0 as typed, 1 at its high. */
export const valueAtPlace = (value: number, { low, high }: TypedRange, place: number): number =>
  place < 0 ? value + place * (value - low) : value + place * (high - value);
