import { at } from "../lists.js";
import { requireCount } from "./allowed.js";
import { latinHypercube, requireDistinct, type Shares } from "./latin-hypercube.js";
import { scrambledSobol } from "./sobol.js";

/** Two samples of the same inputs, drawn apart. */
export interface TwoSamples {
  readonly first: Shares;
  readonly second: Shares;
}

export interface SensitivityPlan {
  readonly seed: number;
  readonly ids: readonly string[];
  /** Draws of each sample; the model is then run count × (ids + 2) times. */
  readonly count: number;
  readonly plan: "latin-hypercube" | "sobol";
}

/** @throws RangeError as the plan's own; Sobol points have dimensions for half as many ids here */
export function twoSamples({ seed, ids, count, plan }: SensitivityPlan): TwoSamples {
  requireDistinct(ids);
  const draw = plan === "sobol" ? scrambledSobol : latinHypercube;
  const names = (sample: string) => ids.map((id) => `${sample}/${id}`);
  const columns = draw(seed, [...names("first"), ...names("second")], count);
  const sample = (name: string) => new Map(ids.map((id) => [id, columnOf(columns, `${name}/${id}`)]));
  return { first: sample("first"), second: sample("second") };
}

/** What a model gives for the first sample, the second, and the first with one input at a time taken from the second. */
export interface DesignValues {
  readonly first: readonly number[];
  readonly second: readonly number[];
  /** By the id of the input taken from the second sample. */
  readonly exchanged: ReadonlyMap<string, readonly number[]>;
}

/** Runs a function of named shares over the two samples (A, B and A_B of Saltelli and others 2010). */
export function designValues(
  { first, second }: TwoSamples,
  evaluate: (share: (id: string) => number) => number,
): DesignValues {
  const count = first.values().next().value?.length ?? 0;
  requireCount("draws of the first sample", count, 1);
  const run = (from: (id: string) => Shares) =>
    Array.from({ length: count }, (_, draw) => evaluate((id) => at(columnOf(from(id), id), draw)));
  return {
    first: run(() => first),
    second: run(() => second),
    exchanged: new Map([...first.keys()].map((id) => [id, run((asked) => (asked === id ? second : first))])),
  };
}

function columnOf(shares: Shares, id: string): readonly number[] {
  const column = shares.get(id);
  if (!column) throw new RangeError(`no shares for ${id}; there are: ${[...shares.keys()].join(", ")}`);
  return column;
}
