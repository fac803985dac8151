import type { Assumed } from "../assumed.js";
import type { RegisteredId } from "../register/register.js";

/** What an entry is measured in, by the names of the dimensions that a study's quantities have. */
export type Measure =
  | "area"
  | "count"
  | "length"
  | "moneyPerArea"
  | "moneyPerEnergy"
  | "moneyPerVolume"
  | "share"
  | "smallLength"
  | "speed";

/** Something that follows from what was entered for a clean structure, with its place in the study. */
export interface Entry {
  readonly at: readonly PropertyKey[];
  readonly what: string;
  readonly measure: Measure;
  readonly found: number;
  readonly remedy: string;
}

/** An entry held against what is usual for its kind. It warns; no figure depends on it. */
export interface EntryCheck extends Entry {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly passed: boolean;
}

/** What the order of adding up may leave over. */
const rounding = 1e-9;

export function within(entry: Entry, { low, high }: Partial<Pick<EntryCheck, "low" | "high">>): EntryCheck {
  const isHighEnough = low === undefined || entry.found >= low - Math.abs(low) * rounding;
  const isLowEnough = high === undefined || entry.found <= high + Math.abs(high) * rounding;
  return { ...entry, low, high, passed: isHighEnough && isLowEnough };
}

/** Holds an entry against the range that the assumptions call usual. */
export const usual = (
  entry: Entry,
  { low, high }: { readonly low: RegisteredId; readonly high: RegisteredId },
  assumed: Assumed,
): EntryCheck => within(entry, { low: assumed(low), high: assumed(high) });

/** The same where only too much is unusual. */
export const usuallyAtMost = (
  entry: Entry,
  { high }: { readonly high: RegisteredId },
  assumed: Assumed,
): EntryCheck => within(entry, { high: assumed(high) });
