import { centsPerUnit, type Money } from "../../model/money/decimal.js";
import type { CostLine } from "../../model/money/line.js";

/** An amount as text with two decimals. */
export const text = (amount: Money): string => amount.toFixed(2);

export function lineJson(line: CostLine): object {
  const { cents, ...rest } = line;
  return { ...rest, amount: (cents / centsPerUnit).toFixed(2) };
}
