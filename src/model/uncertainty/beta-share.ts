import { betaQuantileOf } from "../risk/beta.js";
import { requireBetween, requireWithin } from "./allowed.js";
import type { Distribution } from "./distribution.js";

/**
 * Beta distribution of a share, such as what counts of boats leave open: mean α/(α+β), variance αβ/((α+β)²(α+β+1)).
 * @throws RangeError for parameters that are not finite and above 0
 */
export function betaShare({ alpha, beta }: { readonly alpha: number; readonly beta: number }): Distribution {
  requireBetween("beta distribution: alpha", alpha, 0, Number.POSITIVE_INFINITY);
  requireBetween("beta distribution: beta", beta, 0, Number.POSITIVE_INFINITY);
  const sum = alpha + beta;
  const quantile = betaQuantileOf(alpha, beta);
  return {
    kind: "beta",
    mean: alpha / sum,
    variance: (alpha * beta) / (sum ** 2 * (sum + 1)),
    support: { low: 0, high: 1 },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return quantile(u);
    },
  };
}
