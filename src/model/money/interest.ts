import { sumOf } from "../../lists.js";

export type Timing = "mid-year" | "end-of-year";

/**
 * Present value of 1 paid in year 1, 2, … of the horizon, real rate: (1+r)^−t at the year's end, or
 * (1+r)^−(t−½) in its middle (the default of a study). The present is the start of year 1.
 */
export function discountFactor(year: number, rate: number, timing: Timing): number {
  return (1 + rate) ** -(timing === "end-of-year" ? year : year - 1 / 2);
}

export function discountFactors(horizon: number, rate: number, timing: Timing): number[] {
  return Array.from({ length: horizon }, (_, index) => discountFactor(index + 1, rate, timing));
}

/** Uniform series present worth, P/A = ((1+i)^n − 1)/(i(1+i)^n), written so that a long series does not overflow. */
export function presentWorthFactor(rate: number, years: number): number {
  return rate === 0 ? years : (1 - (1 + rate) ** -years) / rate;
}

/** Capital recovery, A/P = i/(1 − (1+i)^−n): the yearly payment at each year's end that repays 1 over `years`. */
export function capitalRecoveryFactor(rate: number, years: number): number {
  return 1 / presentWorthFactor(rate, years);
}

/**
 * The equal yearly amount with the same present value under the same timing:
 * present value over the sum of the discount factors, A = P/Σ v(t).
 */
export function equivalentYearly(presentValue: number, factors: readonly number[]): number {
  return presentValue / sumOf(factors);
}
