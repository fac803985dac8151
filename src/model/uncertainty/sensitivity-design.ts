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

function columnOf(shares: Shares, id: string): readonly number[] {
  const column = shares.get(id);
  if (!column) throw new RangeError(`no shares for ${id}; there are: ${[...shares.keys()].join(", ")}`);
  return column;
}
