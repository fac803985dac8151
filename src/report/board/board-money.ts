import type { Money } from "../../model/money/decimal.js";
import type { Formatter } from "../words/format.js";

/** Amounts below it tell a board nothing. */
const least = 100;

/** Money as the board's part has it: what is less than a hundred is told as that. */
export const boardMoney = (format: Formatter): Formatter => ({
  ...format,
  money: (amount) => (isSmall(amount) ? `under ${format.exactMoney(least)}` : format.money(amount)),
  exactMoney: (amount) => (isSmall(amount) ? `under ${format.exactMoney(least)}` : format.exactMoney(amount)),
});

const isSmall = (amount: Money | number) => Number(amount) !== 0 && Math.abs(Number(amount)) < least;
