import type { Money } from "../../model/money/decimal.js";
import type { OptionResult } from "../../model/option.js";
import type { OptionBalance } from "../../model/option-balance.js";

/** Where the answer on an option that follows a schedule of levels turns. */
export interface ScheduleTurn {
  /** Present value of what it costs beside following the schedule. */
  readonly otherCost: Money;
  /** Yearly cost of following the schedule at which it neither pays nor loses. */
  readonly carried: Money;
}

/** Absent where the option follows no schedule. */
export function scheduleTurn({
  addedProgramCost,
  avoidedLoss,
  result,
}: OptionBalance): ScheduleTurn | undefined {
  if (result.option.schedule === undefined) return undefined;
  const otherCost = addedProgramCost.minus(result.schedulePresentValue);
  return { otherCost, carried: avoidedLoss.minus(otherCost).dividedBy(scheduleWeight(result)) };
}

/** What the yearly cost of following a schedule weighs in the present value, with the rises of its prices. */
function scheduleWeight({ schedulePerYear, schedulePresentValue, knownWeight }: OptionResult): number {
  const weight = schedulePresentValue.dividedBy(schedulePerYear).toNumber();
  return weight > 0 && Number.isFinite(weight) ? weight : knownWeight("other");
}
