import { betaShare } from "./beta-share.js";
import { discrete, type WeightedValue } from "./discrete.js";
import type { Distribution, ThreePoints } from "./distribution.js";
import { fixed } from "./fixed.js";
import { type LognormalInput, lognormal } from "./lognormal.js";
import { pert } from "./pert.js";
import { triangular } from "./triangular.js";
import { type TruncatedNormalInput, truncatedNormal } from "./truncated-normal.js";
import { uniform } from "./uniform.js";

/** A distribution as data: its kind and the numbers that the kind needs. */
export type DistributionInput =
  | { readonly kind: "fixed"; readonly value: number }
  | { readonly kind: "uniform"; readonly low: number; readonly high: number }
  | ({ readonly kind: "triangular" | "pert" } & ThreePoints)
  | { readonly kind: "beta"; readonly alpha: number; readonly beta: number }
  | ({ readonly kind: "truncated-normal" } & TruncatedNormalInput)
  | ({ readonly kind: "lognormal" } & LognormalInput)
  | { readonly kind: "discrete"; readonly values: readonly WeightedValue[] };

/** @throws RangeError for numbers that the kind does not allow */
export function distributionOf(input: DistributionInput): Distribution {
  switch (input.kind) {
    case "fixed":
      return fixed(input.value);
    case "uniform":
      return uniform(input);
    case "triangular":
      return triangular(input);
    case "pert":
      return pert(input);
    case "beta":
      return betaShare(input);
    case "truncated-normal":
      return truncatedNormal(input);
    case "lognormal":
      return lognormal(input);
    case "discrete":
      return discrete(input.values);
  }
}
