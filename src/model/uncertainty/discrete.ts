import { at } from "../../lists.js";
import { requireFinite, requireNotNegative, requireWithin } from "./allowed.js";
import type { Distribution } from "./distribution.js";

/** A possible value, and how likely it is beside the others; weights need not sum to 1. */
export interface WeightedValue {
  readonly value: number;
  readonly weight: number;
}

/**
 * One of several values, each with the chance weight / sum of weights. The quantile is the least value of which the
 * chance of it or a lower one is above u (at u = 1 the greatest), so that over u in [0, 1) each has its chance exactly.
 * @throws RangeError without values, for values that are not finite, or weights that are negative or all 0
 */
export function discrete(values: readonly WeightedValue[]): Distribution {
  values.forEach(({ value, weight }, index) => {
    requireFinite(`discrete distribution: value ${index}`, value);
    requireNotNegative(`discrete distribution: weight ${index}`, weight);
  });
  const sorted = values.filter(({ weight }) => weight > 0).toSorted((one, other) => one.value - other.value);
  const sum = sorted.reduce((total, { weight }) => total + weight, 0);
  if (!(sum > 0 && Number.isFinite(sum))) {
    throw new RangeError(
      `discrete distribution: weights of ${values.length} values sum to ${sum}; allowed: finite, above 0`,
    );
  }
  const mean = sorted.reduce((total, { value, weight }) => total + value * (weight / sum), 0);
  return {
    kind: "discrete",
    mean,
    variance: sorted.reduce((total, { value, weight }) => total + (value - mean) ** 2 * (weight / sum), 0),
    support: { low: at(sorted, 0).value, high: at(sorted, sorted.length - 1).value },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      return valueAt(sorted, u * sum);
    },
  };
}

function valueAt(sorted: readonly WeightedValue[], weightBelow: number): number {
  let passed = 0;
  for (const { value, weight } of sorted) {
    passed += weight;
    if (passed > weightBelow) return value;
  }
  return at(sorted, sorted.length - 1).value;
}
