import type { ProgramOption } from "./inputs.js";
import type { Money } from "./money/decimal.js";
import type { OptionResult } from "./option.js";
import { benefitCostRatio } from "./other-rates.js";

/** What an option adds to another and avoids of its infestation cost; present values. */
export interface Difference {
  readonly addedProgramCost: Money;
  readonly avoidedLoss: Money;
  readonly netBenefit: Money;
  /** Avoided loss over added program cost; absent where the option costs nothing more. */
  readonly benefitCostRatio: number | undefined;
}

/** An option against the program in force. */
export interface Increment extends Difference {
  readonly result: OptionResult;
  /** Of a year with a clean lake. */
  readonly addedCostPerYear: Money;
  /** Hours that the staff list pays more in a year. */
  readonly addedHoursPerYear: number;
}

/** An option less another, which it is taken to replace. */
export function difference(result: OptionResult, before: OptionResult): Difference {
  const addedProgramCost = result.presentValue.program.minus(before.presentValue.program);
  const avoidedLoss = before.presentValue.infestation.minus(result.presentValue.infestation);
  return {
    addedProgramCost,
    avoidedLoss,
    netBenefit: avoidedLoss.minus(addedProgramCost),
    benefitCostRatio: benefitCostRatio(avoidedLoss, addedProgramCost),
  };
}

/**
 * An option against the program in force, E, in place of no program: B = (XE − X) − (K − KE). Increments add up:
 * from A to B and from B to C is from A to C.
 */
export function increment(result: OptionResult, existing: OptionResult): Increment {
  return {
    ...difference(result, existing),
    result,
    addedCostPerYear: result.programPerYear.minus(existing.programPerYear),
    addedHoursPerYear: staffHours(result.option) - staffHours(existing.option),
  };
}

/** Hours a year that an option's staff list pays. */
export const staffHours = ({ staff }: Pick<ProgramOption, "staff">): number =>
  staff.reduce((sum, { hoursPerYear, overtime }) => sum + hoursPerYear + (overtime?.hours ?? 0), 0);

/** Of these, the hours of those who inspect: supervision and what else has a group of its own is not at a station. */
export const inspectorHours = ({ staff }: Pick<ProgramOption, "staff">): number =>
  staffHours({ staff: staff.filter(({ group = "wages" }) => group === "wages") });
