import type { Money } from "../../model/money/decimal.js";
import { amountOf, type CostLine } from "../../model/money/line.js";

/** An amount as text with two decimals. */
export const text = (amount: Money): string => amount.toFixed(2);

export function lineJson(line: CostLine): object {
  const { cents: _, ...rest } = line;
  return { ...rest, amount: text(amountOf(line)) };
}
