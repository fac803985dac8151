import { betaQuantileOf } from "../risk/beta.js";
import { requireWithin } from "./allowed.js";
import { between, type Distribution, requireThreePoints, type ThreePoints } from "./distribution.js";
import { fixed } from "./fixed.js";

/** Weight of the most likely value against the two ends: the usual choice. */
const shape = 4;

/**
 * Beta-PERT: a beta distribution between low a and high b with α = 1 + 4(m−a)/(b−a) and β = 1 + 4(b−m)/(b−a).
 * Mean μ = (a+4m+b)/6; variance (μ−a)(b−μ)/7, which is that of the beta distribution; ((b−a)/6)² only comes near it.
 * Fixed if the three points are equal.
 * @throws RangeError for points that are not finite or not in rising order
 */
export function pert(points: ThreePoints): Distribution {
  requireThreePoints("PERT", points);
  const { low, mode, high } = points;
  if (low === high) return fixed(low);
  const width = high - low;
  const alpha = 1 + (shape * (mode - low)) / width;
  const beta = 1 + (shape * (high - mode)) / width;
  const sum = alpha + beta;
  const shareAt = betaQuantileOf(alpha, beta);
  return {
    kind: "pert",
    mean: low + (width * alpha) / sum,
    variance: (width ** 2 * (alpha / sum) * (beta / sum)) / (sum + 1),
    support: { low, high },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return between(points, shareAt(u));
    },
  };
}
