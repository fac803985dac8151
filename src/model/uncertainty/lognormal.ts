import { requireFinite } from "./allowed.js";
import type { Distribution } from "./distribution.js";
import { fixed } from "./fixed.js";
import { normalQuantile } from "./normal-quantile.js";

/** Values not exceeded with a chance of 10 % and of 90 %. */
export interface LognormalInput {
  readonly p10: number;
  readonly p90: number;
}

/**
 * A number above 0 whose logarithm is normal: skewed to large values, as costs are. With σ = ln(P90/P10) / (2 z₉₀) and
 * μ = (ln P10 + ln P90)/2 of the logarithm: median e^μ, mean e^(μ + σ²/2), variance (e^(σ²) − 1) e^(2μ + σ²).
 * Fixed if P10 and P90 are equal. It has no greatest value: u = 1 is refused.
 * @throws RangeError unless 0 < P10 ≤ P90, finite, and near enough for mean and variance to be finite
 */
export function lognormal({ p10, p90 }: LognormalInput): Distribution {
  requireFinite("lognormal distribution: p90", p90);
  if (!(p10 > 0 && p10 <= p90)) {
    throw new RangeError(`lognormal distribution: p10 is ${p10}, p90 is ${p90}; allowed: 0 < p10 ≤ p90`);
  }
  if (p10 === p90) return fixed(p10);
  const location = (Math.log(p10) + Math.log(p90)) / 2;
  const scale = (Math.log(p90) - Math.log(p10)) / (2 * normalQuantile(9 / 10));
  const mean = Math.exp(location + scale ** 2 / 2);
  const variance = Math.expm1(scale ** 2) * mean ** 2;
  requireFinite(`lognormal distribution: variance for p10 of ${p10} and p90 of ${p90}`, variance);
  return {
    kind: "lognormal",
    mean,
    variance,
    support: { low: 0, high: Number.POSITIVE_INFINITY },
    quantile: (u) => {
      if (!(u >= 0 && u < 1)) throw new RangeError(`u is ${u}; allowed: from 0 to below 1`);
      return u === 0 ? 0 : Math.exp(location + scale * normalQuantile(u));
    },
  };
}
