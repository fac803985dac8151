import { requireFinite, requireNotNegative, requireWithin } from "./allowed.js";
import { type Distribution, requireRange } from "./distribution.js";
import { fixed } from "./fixed.js";
import { normalChance, normalDensity } from "./normal.js";
import { normalQuantile } from "./normal-quantile.js";

/** Mean and standard deviation are those of the whole bell curve, before what lies outside the bounds is cut off. */
export interface TruncatedNormalInput {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly low: number;
  readonly high: number;
}

/** Of a smaller part of the curve the mean and variance would lose digits, and its shape is hardly a bell's. */
const leastPart = 1 / 100;

/**
 * Normal distribution with what lies outside two bounds cut off and the rest scaled up. With α and β the bounds in
 * standard deviations from the mean and Z = Φ(β) − Φ(α): mean μ + σ(φ(α) − φ(β))/Z, variance
 * σ²(1 + (αφ(α) − βφ(β))/Z − ((φ(α) − φ(β))/Z)²). Source: Johnson, Kotz and Balakrishnan 1994, Continuous Univariate
 * Distributions 1, chapter 13 (from memory). Fixed if the deviation is 0 or the bounds are equal.
 * @throws RangeError for numbers that are not finite, a negative deviation, bounds in falling order, or bounds that
 * hold less than a hundredth of the curve
 */
export function truncatedNormal(input: TruncatedNormalInput): Distribution {
  const { mean: centre, standardDeviation: deviation, low, high } = input;
  requireRange("truncated normal", low, high);
  requireFinite("truncated normal distribution: mean", centre);
  requireNotNegative("truncated normal distribution: standardDeviation", deviation);
  if (deviation === 0 || low === high) return withoutSpread(input);
  const [alpha, beta] = [(low - centre) / deviation, (high - centre) / deviation];
  const [below, above] = [normalChance(alpha), normalChance(-beta)];
  const part = 1 - below - above;
  if (part < leastPart) throw new RangeError(tooLittle(input, part));
  const [densityLow, densityHigh] = [normalDensity(alpha), normalDensity(beta)];
  const shift = (densityLow - densityHigh) / part;
  const slope = (alpha * densityLow - beta * densityHigh) / part;
  const standard = (u: number) => {
    const chance = below + u * part;
    return chance <= 1 / 2 ? normalQuantile(chance) : -normalQuantile(above + (1 - u) * part);
  };
  return {
    kind: "truncated-normal",
    mean: centre + deviation * shift,
    variance: deviation ** 2 * (1 + slope - shift ** 2),
    support: { low, high },
    quantile: (u) => {
      requireWithin("u", u, 0, 1);
      if (u === 0) return low;
      if (u === 1) return high;
      return Math.min(high, Math.max(low, centre + deviation * standard(u)));
    },
  };
}

function withoutSpread({ mean, standardDeviation, low, high }: TruncatedNormalInput): Distribution {
  if (standardDeviation === 0) requireWithin("truncated normal distribution: mean", mean, low, high);
  return fixed(standardDeviation === 0 ? mean : low);
}

function tooLittle({ mean, standardDeviation, low, high }: TruncatedNormalInput, part: number): string {
  return (
    `truncated normal distribution: low ${low} to high ${high} hold ${part} of the curve of mean ${mean} and ` +
    `standardDeviation ${standardDeviation}; allowed: ${leastPart} or more. Widen the bounds, or take a uniform distribution`
  );
}
