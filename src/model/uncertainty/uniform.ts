import { requireWithin } from "./allowed.js";
import { between, type Distribution, requireRange } from "./distribution.js";
import { fixed } from "./fixed.js";

/**
 * Every value between two bounds as likely as any other: mean (a+b)/2, variance (b−a)²/12. Fixed if the bounds are equal.
 * @throws RangeError for bounds that are not finite or in falling order
 */
export function uniform(support: { readonly low: number; readonly high: number }): Distribution {
  const { low, high } = support;
  requireRange("uniform", low, high);
  if (low === high) return fixed(low);
  return {
    kind: "uniform",
    mean: low + (high - low) / 2,
    variance: (high - low) ** 2 / 12,
    support: { low, high },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return between(support, u);
    },
  };
}
