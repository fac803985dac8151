import { sumOf } from "../../lists.js";
import type { Difference } from "../../model/increments.js";
import type { Money } from "../../model/money/decimal.js";
import type { OptionBalance } from "../../model/option-balance.js";
import { ratio } from "./format.js";

type Sign = -1 | 0 | 1;

const halfACent = 0.005;

/** The sign of an amount as it is told: what is no cent is nothing. */
export function signOf(amount: Money): Sign {
  if (amount.abs().lessThan(halfACent)) return 0;
  return amount.isNegative() ? -1 : 1;
}

/** Whether an option is worth more than it costs. */
export const pays = ({ netBenefit }: Pick<Difference, "netBenefit">): boolean => signOf(netBenefit) > 0;

/** True for an added cost above nothing that is told as "under $1" a year: a ratio over it would say nothing. */
export const isNextToNothing = ({
  addedProgramCost,
  perYear,
}: Pick<OptionBalance, "addedProgramCost" | "perYear">): boolean =>
  signOf(addedProgramCost) >= 0 && perYear().addedProgramCost < 1;

type Ratio = Pick<OptionBalance, "addedProgramCost" | "benefitCostRatio" | "perYear">;

/** Whether the ratio says anything: there is an added cost, and more than next to none. */
export const hasRatio = <Balance extends Ratio>(
  balance: Balance,
): balance is Balance & { readonly benefitCostRatio: number } =>
  balance.benefitCostRatio !== undefined && !isNextToNothing(balance);

/** A benefit–cost ratio for the first page. */
export const ratioWords = (balance: Ratio): string =>
  hasRatio(balance) ? ratio(balance.benefitCostRatio) : "no added cost";

/**
 * The same for a cell of a table; none over an added cost that is next to nothing.
 * @param discountFactors present value of 1 in each year
 */
export function ratioCell(
  { addedProgramCost, benefitCostRatio }: Pick<Difference, "addedProgramCost" | "benefitCostRatio">,
  discountFactors: readonly number[],
): string {
  const isTold = addedProgramCost.toNumber() / sumOf(discountFactors) >= 1;
  return benefitCostRatio === undefined || !isTold ? "–" : ratio(benefitCostRatio);
}
