import { at } from "../../lists.js";

/** A mean over replications and the standard error of it; an exact value has the error 0. */
export interface Estimate {
  readonly mean: number;
  readonly standardError: number;
}

const sum = (values: Float64Array) => values.reduce((total, each) => total + each, 0);

/** Mean x̄ of n ≥ 2 replications; standard error √(Σ(x − x̄)²/(n(n − 1))). */
export function meanEstimate(values: Float64Array): Estimate {
  const mean = sum(values) / values.length;
  const squares = values.reduce((total, each) => total + (each - mean) ** 2, 0);
  return { mean, standardError: Math.sqrt(squares / (values.length * (values.length - 1))) };
}

/**
 * Ratio of two totals over n ≥ 2 replications, r = Σx/Σy; standard error √(Σ(x − r y)²/(n(n − 1)))/ȳ.
 * A sample without a boat has nobody who waited: 0 of 0 counts as 0.
 * Source: ratio estimation, for instance Cochran 1977, Sampling Techniques (from memory).
 */
export function ratioEstimate(numerators: Float64Array, denominators: Float64Array): Estimate {
  const total = sum(denominators);
  if (total === 0) return { mean: 0, standardError: 0 };
  const mean = sum(numerators) / total;
  const deviations = numerators.map((each, index) => each - mean * at(denominators, index));
  const count = numerators.length;
  return { mean, standardError: (meanEstimate(deviations).standardError * count) / total };
}

/** Mean of independent estimates by weight, Σw x/Σw; standard error √Σ(w e)²/Σw. Weights are not all 0. */
export function weightedEstimate(estimates: readonly Estimate[], weights: readonly number[]): Estimate {
  let mean = 0;
  let square = 0;
  let total = 0;
  for (const [index, each] of estimates.entries()) {
    const weight = at(weights, index);
    mean += weight * each.mean;
    square += (weight * each.standardError) ** 2;
    total += weight;
  }
  return { mean: mean / total, standardError: Math.sqrt(square) / total };
}
