import { sumOf } from "../../lists.js";

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

export const addingUpNote = (step: string): string =>
  `Amounts are rounded to ${step}, with the least change that makes them add up as printed.`;
