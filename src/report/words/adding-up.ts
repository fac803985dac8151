import { sumOf } from "../../lists.js";
import type { Formatter } from "./format.js";

/** Amounts of a table that are told with their sum. */
interface AddingUp {
  readonly parts: readonly number[];
  readonly sum: number;
}

/** To what amounts of one table are rounded: a power of ten, at least 1, that leaves the largest three or four figures. */
export function stepFor(amounts: readonly number[]): number {
  const largest = Math.max(1, ...amounts.map(Math.abs));
  return 10 ** Math.max(0, Math.floor(Math.log10(largest)) - 3);
}

/**
 * Amounts rounded so that they add up as printed: their sum is rounded, each amount is rounded down, and what is left
 * over goes, a step at a time, to those of the largest remainders (Hamilton's method). None moves by a whole step.
 */
export function addingUp(amounts: readonly number[], step: number): AddingUp {
  const steps = amounts.map((amount) => Math.floor(amount / step));
  const sum = Math.round(sumOf(amounts) / step) || 0;
  const left = sum - sumOf(steps);
  const order = amounts
    .map((amount, index) => ({ index, remainder: amount / step - Math.floor(amount / step) }))
    .sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  const raised = new Set(order.slice(0, left).map(({ index }) => index));
  return {
    parts: steps.map((each, index) => (each + Number(raised.has(index))) * step),
    sum: sum * step,
  };
}

/** A whole told with two amounts of which one is taken from the other, in the order in which they were given. */
interface Told {
  readonly from: string;
  readonly less: string;
  readonly difference: string;
}

/**
 * A difference to three figures, as it stands alone, with its amounts rounded to its step so that they add up as printed:
 * the larger is rounded and the other follows. An amount below the step is told by itself.
 */
export function differenceTexts(
  { from, less }: { readonly from: number; readonly less: number },
  { money, exactMoney }: Pick<Formatter, "money" | "exactMoney">,
): Told {
  const difference = from - less;
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, Math.abs(difference)))) - 2);
  const rounded = (amount: number) => Math.round(amount / step) * step;
  const isFromLarger = Math.abs(from) >= Math.abs(less);
  const larger = rounded(isFromLarger ? from : less);
  const shown = step === 1 ? rounded(difference) : Number(difference.toPrecision(3));
  const follows = isFromLarger ? larger - shown : shown + larger;
  const told = (amount: number, printed: number) =>
    Math.abs(amount) < step ? money(amount) : exactMoney(printed);
  return {
    from: told(from, isFromLarger ? larger : follows),
    less: told(less, isFromLarger ? follows : larger),
    difference: money(difference),
  };
}

export const addingUpNote = (step: string): string =>
  `Amounts are rounded to ${step}, adjusted so that totals match.`;
