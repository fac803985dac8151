import type { Assumed } from "./assumed.js";
import { type BearerShare, bearerShares } from "./bearers.js";
import { type BreakEven, breakEven, noBreakEven } from "./break-even/break-even.js";
import { withLater } from "./computed-once.js";
import { type Difference, difference } from "./increments.js";
import type { StudyInput } from "./inputs.js";
import type { Money } from "./money/decimal.js";
import { equivalentYearly } from "./money/interest.js";
import { type OptionResult, type OptionSettings, optionResult } from "./option.js";
import { balanceAtRate, otherRates, type RateBalance } from "./other-rates.js";
import { type ProgramBudget, programBudget } from "./program/budget.js";

/** A difference of present values as equal yearly amounts. */
export interface YearlyDifference {
  readonly addedProgramCost: number;
  readonly avoidedLoss: number;
}

/** An option against the baseline. Positive net benefit: the program costs less than what it avoids. */
export interface OptionBalance extends Difference {
  readonly result: OptionResult;
  /** Worked out when asked for: the ranges of a report do without. */
  readonly breakEven: BreakEven;
  /** Added cost and avoided loss as equal yearly amounts; worked out when asked for. */
  readonly perYear: () => YearlyDifference;
  /** The same at the discount rates beside the study's; worked out when asked for. */
  readonly atOtherRates: () => readonly RateBalance[];
  /** Present value that the option's response saves, less what its attempts cost; worked out when asked for. */
  readonly responseBenefit: () => Money | undefined;
  /** The same if its checks kept nobody away; worked out when asked for. Absent where the option counts on none. */
  readonly withoutDeterrence: () => Difference | undefined;
  /** Worked out when asked for. */
  readonly bearers: readonly BearerShare[];
  /** The program by fiscal year while the lake stays clean; worked out when asked for. */
  readonly budget: ProgramBudget | undefined;
}

/** What the options of a study rest on. */
interface OptionBasis {
  readonly input: StudyInput;
  readonly source: Assumed;
  readonly settings: OptionSettings;
}

/** Weighs an option against the baseline. */
export function optionBalance(
  result: OptionResult,
  baseline: OptionResult,
  rest: OptionBasis,
): OptionBalance {
  const rates = otherRates(rest.input, rest.source);
  const against = difference(result, baseline);
  const balance = {
    result,
    ...against,
    perYear: () => yearly(against, rest.settings.factors),
    responseBenefit: () => responseBenefit(result, rest),
    withoutDeterrence: () => withoutDeterrence(result, baseline, rest),
    atOtherRates: () => rates.map((rate) => balanceAtRate(rate, { result, baseline }, rest)),
  };
  return withLater(balance, {
    breakEven: () =>
      rest.input.lake.infestedSince === undefined ? breakEven(result, baseline, rest.settings) : noBreakEven,
    bearers: () => bearerShares(rest.input.money, { result, baseline, ...against }),
    budget: () => programBudget(result.option, rest.input.money),
  });
}

const yearly = (
  { addedProgramCost, avoidedLoss }: Difference,
  factors: readonly number[],
): YearlyDifference => ({
  addedProgramCost: equivalentYearly(addedProgramCost.toNumber(), factors),
  avoidedLoss: equivalentYearly(avoidedLoss.toNumber(), factors),
});

/** All costs of the option without its response, less all its costs; absent where it states none. */
function responseBenefit(
  { option, presentValue }: OptionResult,
  { input, source, settings }: OptionBasis,
): Money | undefined {
  if (option.response === undefined) return undefined;
  const without = optionResult({ ...option, response: undefined }, input, source, settings);
  return without.presentValue.total.minus(presentValue.total);
}

/** The option against the baseline without the deterrence that it counts on. */
function withoutDeterrence(
  { option }: OptionResult,
  baseline: OptionResult,
  { input, source, settings }: OptionBasis,
): Difference | undefined {
  const { steps } = option;
  if (!steps || steps.deterrence === 0) return undefined;
  const without = { ...option, steps: { ...steps, deterrence: 0 } };
  return difference(optionResult(without, input, source, settings), baseline);
}
