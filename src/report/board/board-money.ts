import type { Formatter } from "../words/format.js";

/** Amounts below it tell a board nothing. */
const least = 100;

/** Money as the board's part has it: what is less than a hundred is told as that. */
export const boardMoney = (format: Formatter): Formatter => ({
  ...format,
  money: (amount) => {
    const size = Math.abs(Number(amount));
    return size > 0 && size < least ? `under ${format.exactMoney(least)}` : format.money(amount);
  },
});
