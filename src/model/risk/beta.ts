/** Logarithm of the gamma function for x above 0: Stirling's series (DLMF 5.11.1) after raising x by Γ(x+1) = xΓ(x). */
export function logGamma(x: number): number {
  let raised = x;
  let product = 1;
  while (raised < stirlingFrom) {
    product *= raised;
    raised += 1;
  }
  const inverse = 1 / raised ** 2;
  const series =
    (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse * (1 / 1680 - inverse / 1188)))) / raised;
  const leading = (raised - 1 / 2) * Math.log(raised) - raised + Math.log(2 * Math.PI) / 2;
  return leading + series - Math.log(product);
}

/** From here on the five terms of the series leave less than 1e-14. */
const stirlingFrom = 12;

/**
 * Regularised incomplete beta function I_x(a, b) as a function of x, with its density times x(1−x): the chance that a
 * share with density ∝ x^(a−1)(1−x)^(b−1) is at most x. What depends on a and b alone is worked out once.
 * Continued fraction DLMF 8.17.22 by Lentz's method in the form of Thompson and Barnett, on the side of the mean where
 * it converges fast; the other side by I_x(a, b) = 1 − I_{1−x}(b, a).
 */
export function betaOf(a: number, b: number) {
  if (!(a > 0 && b > 0 && Number.isFinite(a + b))) {
    throw new RangeError(`a beta distribution with parameters ${a} and ${b}; allowed: finite, above 0`);
  }
  const logConstant = logGamma(a + b) - logGamma(a) - logGamma(b);
  /** The density times x(1−x). */
  const front = (x: number) => Math.exp(logConstant + a * Math.log(x) + b * Math.log1p(-x));
  return {
    front,
    /** @param weight `front` of x, where it is known */
    chanceUpTo: (x: number, weight: number = front(x)) => {
      if (x <= 0) return 0;
      if (x >= 1) return 1;
      return x < (a + 1) / (a + b + 2)
        ? (weight * continuedFraction(x, a, b)) / a
        : 1 - (weight * continuedFraction(1 - x, b, a)) / b;
    },
  };
}

/** Keeps Lentz's method from dividing by nothing. */
const tiny = 1e-300;
/** The fraction takes of the order of √max(a, b) terms. */
const mostTerms = 100_000;

function continuedFraction(x: number, a: number, b: number): number {
  const orTiny = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let upper = 1;
  let lower = 1 / orTiny(1 - ((a + b) * x) / (a + 1));
  let fraction = lower;
  for (let m = 1; m <= mostTerms; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    lower = 1 / orTiny(1 + even * lower);
    upper = orTiny(1 + even / upper);
    fraction *= lower * upper;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    lower = 1 / orTiny(1 + odd * lower);
    upper = orTiny(1 + odd / upper);
    const change = lower * upper;
    fraction *= change;
    if (Math.abs(change - 1) < 2 * Number.EPSILON) return fraction;
  }
  throw new RangeError(`the incomplete beta function of ${a} and ${b} at ${x} does not converge`);
}

/** Steps that always suffice: each halves the bracket where Halley's step does not lead closer. */
const mostSteps = 200;

/** Halley's error after a step is about the cube of the step, each over the distance to the nearer end. */
const lastStep = 1e-7;

/** See `betaQuantileOf`, for a single chance. */
export const betaQuantile = (p: number, a: number, b: number): number => betaQuantileOf(a, b)(p);

/**
 * Share below which the beta distribution holds a chance p, 0 to 1: I_x(a, b) = p solved for x by Halley's method. The
 * slope of I_x is the density f, and the slope of f is f·((a−1)/x − (b−1)/(1−x)). A step is at most twice Newton's; a step
 * that leaves the bracket ends at its middle instead.
 */
export function betaQuantileOf(a: number, b: number): (p: number) => number {
  const { front, chanceUpTo } = betaOf(a, b);
  return (p) => {
    if (!(p >= 0 && p <= 1)) throw new RangeError(`a chance of ${p}; allowed: 0 to 1`);
    if (p === 0 || p === 1) return p;
    let [low, high] = [0, 1];
    let x = a / (a + b);
    for (let step = 0; step < mostSteps; step++) {
      const weight = front(x);
      const excess = chanceUpTo(x, weight) - p;
      if (excess > 0) high = x;
      else low = x;
      const newton = (excess * x * (1 - x)) / weight;
      const turned = newton * ((a - 1) / x - (b - 1) / (1 - x));
      const next = x - newton / (1 - Math.max(-1, Math.min(1, turned)) / 2);
      if (Math.abs(next - x) <= lastStep * Math.min(x, 1 - x)) return next;
      const better = next > low && next < high ? next : (low + high) / 2;
      if (Math.abs(better - x) <= Number.EPSILON * x) return better;
      x = better;
    }
    return x;
  };
}
