import type { Money } from "../money/decimal.js";
import type { OptionResult, OptionSettings } from "../option.js";
import { costShare } from "../program/ramp-up.js";
import { type BreakEvenValues, noBreakEvenValues } from "./break-even-values.js";
import { breakEvenHazards, paysAtNextToNoChance } from "./hazard.js";
import { breakEvenHorizons } from "./horizon.js";
import { breakEvenStoppedShares } from "./stopped.js";

/** Where the answer flips, all else equal. Absent values do not exist in the searched range. */
export interface BreakEven {
  /** Lowest yearly chance of infestation without the program at which the program pays. */
  readonly hazard: number | undefined;
  /** Largest yearly cost of the whole program that the avoided loss would carry. */
  readonly programPerYear: Money | undefined;
  /** Factor on every infestation cost at which the program pays. */
  readonly lossFactor: number | undefined;
  /** Yearly chances of infestation without the program. */
  readonly hazards: BreakEvenValues;
  /** Shares of fouled boats stopped, 0 to 1. */
  readonly stopped: BreakEvenValues;
  /** Horizons in whole years up to that of the study. */
  readonly horizons: BreakEvenValues;
}

/**
 * Break-even values of an option against the baseline. Loss, y = (K − K0)/(X0 − X), and budget,
 * A = (X0 − X + K0 − S)·G/(K − S), are ratios of present values, since both enter linearly, and so there is at most
 * one of each; S is what a schedule of levels costs. The chances at which B(h) = 0 are searched, as are the shares of
 * fouled boats stopped and the horizons at which the net benefit changes its sign.
 */
export function breakEven(result: OptionResult, baseline: OptionResult, settings: OptionSettings): BreakEven {
  const added = result.presentValue.program.minus(baseline.presentValue.program);
  const avoided = baseline.presentValue.infestation.minus(result.presentValue.infestation);
  const running = programWeight(result, settings);
  const weighed = { result, baseline, settings };
  const hazards = breakEvenHazards(weighed);
  return {
    hazard: paysAtNextToNoChance(weighed) ?? hazards.turns[0]?.value,
    programPerYear:
      running > 0 && avoided.greaterThan(0)
        ? avoided.plus(baseline.presentValue.program).minus(result.schedulePresentValue).dividedBy(running)
        : undefined,
    lossFactor:
      avoided.greaterThan(0) && added.greaterThan(0) ? added.dividedBy(avoided).toNumber() : undefined,
    hazards,
    stopped: breakEvenStoppedShares(weighed),
    horizons: breakEvenHorizons(weighed),
  };
}

/**
 * (K − S)/G: what a yearly cost of the program weighs in the present value, with the rises of its own costs. Where
 * these come to nothing a year, or bear another sign in the end than in a year, without rises.
 */
function programWeight(result: OptionResult, { factors }: OptionSettings): number {
  const { option, statesByYear, presentValue, schedulePresentValue, programPerYear } = result;
  if (!programPerYear.isZero()) {
    const own = presentValue.program.minus(schedulePresentValue).dividedBy(programPerYear).toNumber();
    if (own > 0) return own;
  }
  return factors.reduce((sum, factor, year) => {
    const known = statesByYear[year - 1]?.known ?? 0;
    return sum + factor * costShare(option, year) * (1 - known + known * option.afterInfestation.share);
  }, 0);
}

/** Nothing can be avoided where the lake is infested already, so nothing flips the answer. */
export const noBreakEven: BreakEven = {
  hazard: undefined,
  programPerYear: undefined,
  lossFactor: undefined,
  hazards: noBreakEvenValues,
  stopped: noBreakEvenValues,
  horizons: noBreakEvenValues,
};
