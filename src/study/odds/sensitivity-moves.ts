import { valueAtShare } from "../../model/futures/draw-plan.js";
import type { ValueSet } from "./sensitivity-points.js";
import type { NamedInput } from "./uncertain-inputs.js";

/** Shares of an input's values that are not above its low and its high end. */
export const endShares = { low: 0.1, high: 0.9 } as const;
type End = keyof typeof endShares;

/** P10 or P90 of an input; of one with single values the least or the greatest. */
export function valueAtEnd(input: NamedInput, end: End): number {
  const bounds = { low: 0, high: 1 };
  const share = input.distribution.kind === "discrete" ? bounds[end] : endShares[end];
  return valueAtShare(input)(share);
}

const unmoved: ReadonlyMap<string, number> = new Map();

/** The study's own values. */
export const ownValues: ValueSet = { lake: unmoved, chances: unmoved };

/** Values of some inputs, all others as the study has them. */
export function setOf(values: ReadonlyArray<readonly [NamedInput, number]>): ValueSet {
  const ofStage = (stage: NamedInput["stage"]) => {
    const own = values.filter(([input]) => input.stage === stage);
    return own.length === 0 ? unmoved : new Map(own.map(([{ id }, value]) => [id, value]));
  };
  return { lake: ofStage("lake"), chances: ofStage("chances") };
}

export const atEnd = (inputs: readonly NamedInput[], end: End): ValueSet =>
  setOf(inputs.map((input) => [input, valueAtEnd(input, end)]));

/** Inputs that are drawn together, at least two. */
export interface InputGroup {
  readonly id: string;
  readonly name: string;
  readonly members: readonly NamedInput[];
}

/** The groups of which the study draws two members or more. */
export function groupsPresent(
  inputs: readonly NamedInput[],
  groups: ReadonlyArray<{ readonly id: string; readonly name: string; readonly members: readonly string[] }>,
): InputGroup[] {
  return groups
    .map(({ id, name, members }) => ({
      id,
      name,
      members: inputs.filter((input) => members.includes(input.id)),
    }))
    .filter(({ members }) => members.length > 1);
}
