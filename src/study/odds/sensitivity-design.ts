import { at } from "../../lists.js";
import { type DrawPlan, movedTogether, valueAtShare } from "../../model/futures/draw-plan.js";
import { type DesignValues, twoSamples } from "../../model/uncertainty/sensitivity-design.js";
import type { ValueSet } from "./sensitivity-points.js";
import type { NamedInput } from "./uncertain-inputs.js";

/** Inputs that are taken from the second sample together. */
export interface Factor {
  readonly name: string;
  readonly ids: readonly string[];
}

export interface FactorPlan {
  readonly seed: number;
  /** Draws of each sample: the net benefit is then asked for at count × (factors + 2) sets of values. */
  readonly count: number;
  readonly inputs: readonly NamedInput[];
  readonly groups: DrawPlan["groups"];
  /** Each input is in one of them, and the members of a group in the same. */
  readonly factors: readonly Factor[];
}

export interface FactorDesign {
  readonly sets: readonly ValueSet[];
  /** Results at these sets as a design, factors by name. */
  readonly valuesOf: (results: readonly number[]) => DesignValues;
}

/**
 * Two Latin hypercubes of all inputs, and the first with one factor at a time from the second. Inputs of a group keep
 * their rank correlation within each sample, and factors are independent of one another, so that the indices of a factor
 * mean what those of a single independent input do. A factor of chances alone takes the first sample's lake.
 */
export function factorDesign({ seed, count, inputs, groups, factors }: FactorPlan): FactorDesign {
  const ids = inputs.map(({ id }) => id);
  const shares = twoSamples({ seed, ids, count, plan: "latin-hypercube" });
  const [first, second] = [shares.first, shares.second].map((sample) =>
    drawnSets(inputs, movedTogether(new Map(sample), groups), count),
  );
  if (!first || !second) throw new RangeError("a design needs two samples");
  const exchanged = factors.map((factor) =>
    first.map((set, draw) => withFactor(set, at(second, draw), factor)),
  );
  return {
    sets: [first, second, ...exchanged].flat(),
    valuesOf: (results) => {
      const part = (place: number) => results.slice(place * count, (place + 1) * count);
      return {
        first: part(0),
        second: part(1),
        exchanged: new Map(factors.map(({ name }, index) => [name, part(index + 2)])),
      };
    },
  };
}

function drawnSets(
  inputs: readonly NamedInput[],
  columns: ReadonlyMap<string, readonly number[]>,
  count: number,
): ValueSet[] {
  const values = inputs.map((input) => ({
    input,
    column: (columns.get(input.id) ?? []).map(valueAtShare(input)),
  }));
  const ofStage = (stage: NamedInput["stage"], draw: number) =>
    new Map(
      values
        .filter(({ input }) => input.stage === stage)
        .map(({ input, column }) => [input.id, at(column, draw)]),
    );
  return Array.from({ length: count }, (_, draw) => ({
    lake: ofStage("lake", draw),
    chances: ofStage("chances", draw),
  }));
}

function withFactor(own: ValueSet, other: ValueSet, { ids }: Factor): ValueSet {
  const mixed = (stage: "lake" | "chances") => {
    const taken = ids.flatMap((id) => {
      const value = other[stage].get(id);
      return value === undefined ? [] : [[id, value] as const];
    });
    return taken.length === 0 ? own[stage] : new Map([...own[stage], ...taken]);
  };
  return { lake: mixed("lake"), chances: mixed("chances") };
}
