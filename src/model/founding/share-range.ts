import { betaOf } from "../risk/beta.js";
import { type Ninety, toNinetyFifth, type WeightedValue } from "./log-density.js";

const logit = (share: number) => Math.log(share) - Math.log1p(-share);

/** Points on each side of the middle of a share, and how far out they lie in standard deviations. */
const [sharePoints, shareReach] = [6, 4];

/**
 * Shares with the weights of the beta distribution through the range, evenly spaced in their logits: there the density is
 * ∝ x^α (1 − x)^β.
 */
export function sharesThrough(range: Ninety, points: number = sharePoints): WeightedValue[] {
  const { alpha, beta } = betaThrough(range);
  const [low, high] = [logit(range.low), logit(range.high)];
  const middle = (low + high) / 2;
  const step = ((high - low) / 2 / toNinetyFifth) * (shareReach / points);
  const peak = alpha * Math.log(range.low) + beta * Math.log1p(-range.low);
  return Array.from({ length: 2 * points + 1 }, (_, point) => {
    const value = 1 / (1 + Math.exp(-(middle + (point - points) * step)));
    return { value, weight: Math.exp(alpha * Math.log(value) + beta * Math.log1p(-value) - peak) };
  });
}

const mostSteps = 60;
const closeEnough = 1e-9;
/** From here on a beta distribution is as good as normal, and its mean and variance give it. */
const narrow = 1e6;

export interface BetaParameters {
  readonly alpha: number;
  readonly beta: number;
}

/** Of a beta distribution, by the logit of its mean and the logarithm of α + β. */
function betaFrom(middle: number, size: number): BetaParameters {
  const weight = Math.exp(size);
  return { alpha: weight / (1 + Math.exp(-middle)), beta: weight / (1 + Math.exp(middle)) };
}

/** Beta distribution with 5 % below `low` and 5 % above `high`: Newton's method in its mean and its size. */
export function betaThrough({ low, high }: Ninety): BetaParameters {
  const mean = (low + high) / 2;
  const variance = ((high - low) / 2 / toNinetyFifth) ** 2;
  const weight = Math.min(largestWeight, Math.max(1, (mean * (1 - mean)) / variance - 1));
  let [middle, size] = [logit(mean), Math.log(weight)];
  const missAt = (m: number, s: number) => {
    const { alpha, beta } = betaFrom(m, s);
    const { chanceUpTo } = betaOf(alpha, beta);
    return [chanceUpTo(low) - 1 / 20, chanceUpTo(high) - 19 / 20] as const;
  };
  const widest = (logit(high) - logit(low)) / 4;
  for (let step = 0; weight < narrow && step < mostSteps; step++) {
    const miss = missAt(middle, size);
    if (Math.abs(miss[0]) + Math.abs(miss[1]) < closeEnough) break;
    const move = slopeStep * widest;
    const [m, s] = newtonStep(miss, missAt(middle + move, size), missAt(middle, size + slopeStep), [
      move,
      slopeStep,
    ]);
    middle += within(m, widest);
    size += within(s, 1);
  }
  return betaFrom(middle, size);
}

/** Of α + β, for a range that is hardly one. */
const largestWeight = 1e12;
const slopeStep = 1e-4;

const within = (change: number, most: number) => Math.max(-most, Math.min(most, change));

type Pair = readonly [number, number];

/** Change of two unknowns towards no miss, from the misses at a small change of the one and of the other. */
function newtonStep([f, g]: Pair, byOne: Pair, byOther: Pair, moves: Pair): Pair {
  const [a, c] = [(byOne[0] - f) / moves[0], (byOne[1] - g) / moves[0]];
  const [b, d] = [(byOther[0] - f) / moves[1], (byOther[1] - g) / moves[1]];
  const determinant = a * d - b * c;
  return determinant === 0 ? [0, 0] : [(b * g - d * f) / determinant, (c * f - a * g) / determinant];
}
