import type { OptionResult, OptionSettings } from "../option.js";
import type { Root, Roots } from "../root-search.js";

/** A value at which the answer turns. */
export interface BreakEvenValue {
  readonly value: number;
  /** Whether the option pays above it, up to the next. */
  readonly pays: boolean;
}

export interface BreakEvenValues {
  /** In rising order; none if the option pays nowhere or everywhere in the range searched. */
  readonly turns: readonly BreakEvenValue[];
  /** False if two more may hide between neighbours of the grid that was searched. */
  readonly all: boolean;
}

/** An option, what it is weighed against, and what both are reckoned with. */
export interface Weighed {
  readonly result: OptionResult;
  readonly baseline: OptionResult;
  readonly settings: OptionSettings;
}

/** Nothing turns the answer. */
export const noBreakEvenValues: BreakEvenValues = { turns: [], all: true };

/**
 * The roots of a net benefit as turns. A root where it only touches nothing is none.
 * @param valueAt what the reader is told in place of the variable that was searched; it rises with it
 */
export function breakEvenValuesOf(
  { roots, all }: Roots,
  netBenefit: (x: number) => number,
  valueAt: (x: number) => number,
): BreakEvenValues {
  const pays = (x: number) => netBenefit(x) > 0;
  return {
    turns: roots
      .filter(({ low, high }: Root) => pays(low) !== pays(high))
      .map(({ value, high }) => ({ value: valueAt(value), pays: pays(high) })),
    all,
  };
}
