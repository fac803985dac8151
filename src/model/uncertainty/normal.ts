/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Chance Φ(z) that a standard normal number is at most z. Near 0 the series φ(z)·(z + z³/3 + z⁵/15 + …) added to one
 * half (DLMF 7.6.2); farther out Laplace's continued fraction φ(z)/(z + 1/(z + 2/(z + 3/…))) for the tail (DLMF 7.9.1), so
 * that small chances keep their digits.
 */
export function normalChance(z: number): number {
  if (Math.abs(z) < fractionFrom) return 1 / 2 + normalDensity(z) * series(z);
  const tail = upperTail(Math.abs(z));
  return z < 0 ? tail : 1 - tail;
}

/** Where the fraction of `fractionTerms` terms is as good as the numbers it is reckoned in. */
const fractionFrom = 3;
const fractionTerms = 60;

function series(z: number): number {
  let term = z;
  let sum = z;
  for (let odd = 3; Math.abs(term) > Number.EPSILON * Math.abs(sum); odd += 2) {
    term *= z ** 2 / odd;
    sum += term;
  }
  return sum;
}

function upperTail(z: number): number {
  let below = z;
  for (let term = fractionTerms; term >= 1; term--) below = z + term / below;
  return normalDensity(z) / below;
}
