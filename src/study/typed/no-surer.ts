import type { DimensionName } from "../../units/dimensions.js";
import { typedIdOf } from "./typed-kinds.js";
import { type TypedEntries, typedRange } from "./typed-range.js";

/** A likeliest value between its ends. */
interface Ends {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

interface Place {
  readonly path: readonly PropertyKey[];
  readonly dimension: DimensionName;
}

/**
 * The range of a value that nobody entered, at least as wide either way as that of the same number typed by an author.
 * A point stays one: it is then varied as what an author typed.
 */
export function noSurerThanTyped(ends: Ends, { path, dimension }: Place, from: TypedEntries): Ends {
  const { low, value, high } = ends;
  const id = typedIdOf(path, dimension);
  const typed = id && low < high ? typedRange({ id, value, dimension }, from) : undefined;
  return typed ? { low: Math.min(low, typed.low), value, high: Math.max(high, typed.high) } : ends;
}
