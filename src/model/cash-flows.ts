import { at } from "../lists.js";
import type { MoneySettings } from "./inputs.js";
import { nominalFlows, nominalRate, presentValueOfNominal } from "./money/escalation.js";
import { discountFactors } from "./money/interest.js";
import type { OptionResult } from "./option.js";

/** What an option is expected to cost in each year, in prices of the price year and in money of that year. */
export interface CashFlows {
  readonly constant: readonly number[];
  readonly nominal: readonly number[];
  /** Present value of the constant flows at the real rate. */
  readonly realPresentValue: number;
  /** Present value of the nominal flows at the nominal rate, in prices of the price year: the same amount. */
  readonly nominalPresentValue: number;
  readonly nominalRate: number;
}

export function cashFlows({ plainByYear: constant }: OptionResult, money: MoneySettings): CashFlows {
  const { discountRate, inflation, horizon, timing } = money;
  const nominal = nominalFlows(constant, inflation, money);
  const factors = discountFactors(horizon, discountRate, timing);
  return {
    constant,
    nominal,
    realPresentValue: constant.reduce((sum, amount, year) => sum + amount * at(factors, year), 0),
    nominalPresentValue: presentValueOfNominal(nominal, { real: discountRate, inflation }, money),
    nominalRate: nominalRate(discountRate, inflation),
  };
}
