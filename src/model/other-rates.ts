import type { Assumed } from "./assumed.js";
import type { StudyInput } from "./inputs.js";
import type { Money } from "./money/decimal.js";
import { discountFactors } from "./money/interest.js";
import { type OptionResult, type OptionSettings, optionResult } from "./option.js";

/** An option against the baseline at a discount rate beside the study's. */
export interface RateBalance {
  /** Real, a year. */
  readonly rate: number;
  readonly netBenefit: Money;
  /** Absent where the option costs nothing more. */
  readonly benefitCostRatio: number | undefined;
}

/** The rates that a study names, or else those of the assumptions other than the study's own. */
export function otherRates({ money }: StudyInput, source: Assumed): readonly number[] {
  const usual = [source("money.other-rate.low"), source("money.other-rate.high")];
  return money.otherDiscountRates ?? usual.filter((rate) => rate !== money.discountRate);
}

/**
 * Net benefit and ratio at another rate: present values are worked out again. Yearly amounts stay as they are: plans
 * as chosen, and the capital of the program's equipment and of plans alike paid off, at the study's rate.
 */
export function balanceAtRate(
  rate: number,
  { result, baseline }: { result: OptionResult; baseline: OptionResult },
  { input, source, settings }: { input: StudyInput; source: Assumed; settings: OptionSettings },
): RateBalance {
  const { horizon, timing } = input.money;
  const factors = discountFactors(horizon, rate, timing);
  const at = ({ option }: OptionResult) =>
    optionResult(option, input, source, { ...settings, factors }).presentValue;
  const [before, after] = [at(baseline), at(result)];
  const added = after.program.minus(before.program);
  return {
    rate,
    netBenefit: before.total.minus(after.total),
    benefitCostRatio: benefitCostRatio(before.infestation.minus(after.infestation), added),
  };
}

/** Avoided loss over added program cost, present values; absent where nothing is added. */
export function benefitCostRatio(avoidedLoss: Money, addedCost: Money): number | undefined {
  return addedCost.greaterThan(0) ? avoidedLoss.dividedBy(addedCost).toNumber() : undefined;
}
