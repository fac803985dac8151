/** Difference from the expected value, as a share of it. */
export function relativeGap(actual: number, expected: number): number {
  return Math.abs(actual / expected - 1);
}

/** Half a unit in the last of `decimals` printed digits: how far a value may lie from its printed form. */
export function halfDigit(decimals: number): number {
  return 0.5 * 10 ** -decimals * (1 + 1e-6);
}

/** The same value in each month of the year. */
export function everyMonth(value: number): number[] {
  return Array<number>(12).fill(value);
}
