import { requireWithin } from "./allowed.js";
import { between, type Distribution, requireThreePoints, type ThreePoints } from "./distribution.js";
import { fixed } from "./fixed.js";

/**
 * Density that rises in a straight line from low to the mode and falls in one to high. Mean (a+m+b)/3; variance
 * ((m−a)² + (m−a)(b−m) + (b−m)²)/18, the usual (a²+m²+b²−am−ab−mb)/18 without its loss of digits; quantile
 * a + √(p(b−a)(m−a)) up to the mode, b − √((1−p)(b−a)(b−m)) from there. Fixed if the three are equal.
 * @throws RangeError for points that are not finite or not in rising order
 */
export function triangular(points: ThreePoints): Distribution {
  requireThreePoints("triangular", points);
  const { low, mode, high } = points;
  if (low === high) return fixed(low);
  const width = high - low;
  const [rise, fall] = [(mode - low) / width, (high - mode) / width];
  return {
    kind: "triangular",
    mean: low + (width * (1 + rise)) / 3,
    variance: (width ** 2 * (rise ** 2 + rise * fall + fall ** 2)) / 18,
    support: { low, high },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return between(points, u <= rise ? Math.sqrt(u * rise) : 1 - Math.sqrt((1 - u) * fall));
    },
  };
}
