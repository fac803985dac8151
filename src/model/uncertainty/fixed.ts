import { requireFinite, requireWithin } from "./allowed.js";
import type { Distribution } from "./distribution.js";

/**
 * A number that is not uncertain: all chance on one value.
 * @throws RangeError for a value that is not finite
 */
export function fixed(value: number): Distribution {
  requireFinite("fixed distribution: value", value);
  return {
    kind: "fixed",
    mean: value,
    variance: 0,
    support: { low: value, high: value },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return value;
    },
  };
}
