import type { OptionResult, OptionSettings } from "../option.js";
import type { Root, Roots } from "../root.js";
import type { CostOfChances } from "./cost-of-chances.js";

/** A value at which the answer turns. */
export interface Turn {
  readonly value: number;
  /** Whether the option pays above it, up to the next. */
  readonly pays: boolean;
}

export interface Turns {
  /** In rising order; none if the option pays nowhere or everywhere in the range searched. */
  readonly turns: readonly Turn[];
  /** False if two more may hide between neighbours of the grid that was searched. */
  readonly all: boolean;
}

/** An option, what it is weighed against, and what both are reckoned with. */
export interface Weighed {
  readonly result: OptionResult;
  readonly baseline: OptionResult;
  readonly settings: OptionSettings;
  /** What each costs for any chances. */
  readonly costs: { readonly result: CostOfChances; readonly baseline: CostOfChances };
}

/** Nothing turns the answer. */
export const noTurns: Turns = { turns: [], all: true };

/**
 * The roots of a net benefit as turns. A root where it only touches nothing is none.
 * @param tell what the reader is told in place of the variable that was searched; it rises with it
 */
export function turnsOf(
  { roots, all }: Roots,
  netBenefit: (x: number) => number,
  tell: (x: number) => number,
): Turns {
  const pays = (x: number) => netBenefit(x) > 0;
  return {
    turns: roots
      .filter(({ low, high }: Root) => pays(low) !== pays(high))
      .map(({ value, high }) => ({ value: tell(value), pays: pays(high) })),
    all,
  };
}
