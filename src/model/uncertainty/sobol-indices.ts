import { at } from "../../lists.js";
import { type RandomStream, randomStream } from "../random/generator.js";
import { requireCount, requireSameLength, requireValues } from "./allowed.js";
import { momentsOf, variance } from "./running-moments.js";
import type { DesignValues } from "./sensitivity-design.js";

export interface Estimate {
  readonly value: number;
  readonly standardError: number;
}

/** Shares of the result's variance. Estimates may lie a little outside 0 to 1. */
export interface SobolIndices {
  /** What would vanish on average if the input were known. */
  readonly first: Estimate;
  /** What would remain on average if all but this input were known: with the input's part in joint effects. */
  readonly total: Estimate;
}

/**
 * First-order and total Sobol indices of independent inputs, by input. With A, B and A_B the values of the first
 * sample, the second, and the first with input i from the second, V the variance of A and B together:
 * first order mean(B (A_B − A))/V (Saltelli and others 2010. Computer Physics Communications 181:259-270), B taken from the
 * mean of all, which leaves what is estimated and lessens its error; total mean((A − A_B)²)/(2V) (Jansen 1999. Computer
 * Physics Communications 117:35-43; both from memory).
 * Standard errors are the deviations over `resamples` bootstrap samples of the draws; for stratified draws mostly too large.
 * Where inputs are correlated the indices have no such meaning.
 * @throws RangeError below 2 draws, for values that are not finite, or if the result does not vary
 */
export function sobolIndices(
  values: DesignValues,
  bootstrap: { readonly seed: number; readonly resamples: number },
): Map<string, SobolIndices> {
  requireDesign(values);
  requireCount("resamples", bootstrap.resamples, 2);
  const count = values.first.length;
  const whole = estimates(
    values,
    Array.from({ length: count }, (_, draw) => draw),
  );
  const stream = randomStream(bootstrap.seed, "sobol-indices/bootstrap");
  const again = Array.from({ length: bootstrap.resamples }, () => estimates(values, resample(count, stream)));
  return new Map(
    [...values.exchanged.keys()].map((id, input) => {
      const estimate = (kind: "first" | "total"): Estimate => ({
        value: at(whole, input)[kind],
        standardError: Math.sqrt(variance(momentsOf(again.map((each) => at(each, input)[kind])))),
      });
      return [id, { first: estimate("first"), total: estimate("total") }];
    }),
  );
}

function resample(count: number, { uniform }: RandomStream): number[] {
  return Array.from({ length: count }, () => Math.floor(uniform() * count));
}

/** Both indices of each input from the draws named. */
function estimates({ first, second, exchanged }: DesignValues, draws: readonly number[]) {
  const count = draws.length;
  const own = draws.map((draw) => at(first, draw));
  const other = draws.map((draw) => at(second, draw));
  const { mean, squares } = momentsOf([...own, ...other]);
  const spread = squares / (2 * count);
  if (!(spread > 0))
    throw new RangeError(`the result is ${mean} in all draws; allowed: a result that varies`);
  return [...exchanged.values()].map((mixed) => {
    let [products, differences] = [0, 0];
    for (let index = 0; index < count; index++) {
      const change = at(mixed, at(draws, index)) - at(own, index);
      products += (at(other, index) - mean) * change;
      differences += change ** 2;
    }
    return { first: products / count / spread, total: differences / (2 * count) / spread };
  });
}

function requireDesign({ first, second, exchanged }: DesignValues): void {
  requireValues("values of the first sample", first, 2);
  for (const [name, values] of [["second sample", second] as const, ...exchanged]) {
    requireValues(`values of ${name}`, values, 2);
    requireSameLength(`values of ${name}`, values, "those of the first sample", first);
  }
}
