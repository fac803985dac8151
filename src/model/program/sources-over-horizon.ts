import { at, sumOf } from "../../lists.js";
import type { MoneySettings } from "../inputs.js";
import { centsPerUnit } from "../money/decimal.js";
import { growthFactors } from "../money/escalation.js";
import type { OptionResult } from "../option.js";
import { programBudget } from "./budget.js";
import { type FundingSource, fundedBudget } from "./sources.js";

const monthsPerYear = 12;

/**
 * Expected present value of what each source pays over the horizon, P = Σ v(t) r(t) p(t)/i(t): p(t) is what it pays in the
 * months of calendar year t by its terms, i(t) the general price level, and r(t) the part of the program that is expected
 * to run then, 1 − (1−a) K(t−1), with the chance K that mussels are known and the share a that goes on once they are. Months
 * outside the fiscal years that the horizon fills have none.
 */
export function sourcesOverHorizon(
  { option, statesByYear }: Pick<OptionResult, "option" | "statesByYear">,
  money: MoneySettings,
  sources: readonly FundingSource[],
  factors: readonly number[],
): number[] {
  const budget = programBudget(option, money, money.horizon);
  if (!budget) return sources.map(() => 0);
  const levels = growthFactors(factors.length, money.inflation, { ...money, timing: "mid-year" });
  const weights = factors.map((factor, year) => {
    const known = statesByYear[year - 1]?.known ?? 0;
    return (factor * (1 - (1 - option.afterInfestation.share) * known)) / at(levels, year);
  });
  const none = budget.years.map(() => 0);
  const { sources: funded } = fundedBudget(budget, sources, { contingency: none, carriedIn: 0 });
  const early = (money.fiscalYearStart - 1) / monthsPerYear;
  const worthOfYear = budget.years.map(
    (_, year) => (1 - early) * at(weights, year) + (early === 0 ? 0 : early * at(weights, year + 1)),
  );
  return funded.map(
    ({ cents }) => sumOf(cents.map((each, year) => each * at(worthOfYear, year))) / centsPerUnit,
  );
}
