import { requireFinite, requireWithin } from "./allowed.js";

/** What is believed of an uncertain number, in the unit of that number. */
export interface Distribution {
  readonly kind:
    | "fixed"
    | "uniform"
    | "triangular"
    | "pert"
    | "beta"
    | "truncated-normal"
    | "lognormal"
    | "discrete";
  /** Expected value, exact. */
  readonly mean: number;
  /** Square of the standard deviation, exact; in the square of the unit. */
  readonly variance: number;
  /** Least and greatest possible value; a bound that does not exist is infinite. */
  readonly support: { readonly low: number; readonly high: number };
  /**
   * The value that is not exceeded with chance u (inverse of the cumulative distribution); never falls as u rises.
   * @throws RangeError if u is outside 0 to 1, or 1 where there is no greatest value
   */
  readonly quantile: (u: number) => number;
}

/** Least, most likely and greatest value of an uncertain number. */
export interface ThreePoints {
  readonly low: number;
  readonly mode: number;
  readonly high: number;
}

/** @throws RangeError that names the values, unless they are finite and in rising order (equal ones allowed) */
export function requireThreePoints(kind: string, { low, mode, high }: ThreePoints): void {
  requireRange(kind, low, high);
  requireFinite(`${kind} distribution: mode`, mode);
  requireWithin(`${kind} distribution: mode`, mode, low, high);
}

/** @throws RangeError that names the values, unless they are finite, a finite distance apart and in rising order */
export function requireRange(kind: string, low: number, high: number): void {
  requireFinite(`${kind} distribution: low`, low);
  requireFinite(`${kind} distribution: high`, high);
  requireFinite(`${kind} distribution: high − low`, high - low);
  if (low > high) {
    throw new RangeError(`${kind} distribution: low is ${low}, high is ${high}; allowed: low at most high`);
  }
}

/** The value a share of the way from low to high, never outside them. */
export function between({ low, high }: { low: number; high: number }, share: number): number {
  return Math.min(high, Math.max(low, low + (high - low) * share));
}
