/** A federal water-planning rate and how it comes about. Rates are shares: 5 3/8 % is 0.05375. */
export interface PlanningRate {
  readonly rate: number;
  /** The mean yield to the nearest eighth of a percent. */
  readonly rounded: number;
  /** Whether the limit of a quarter point kept the rate from rising or falling as far as the yield. */
  readonly limited: "rise" | "fall" | "no";
}

const eighthsPerUnit = 800;
const mostEighths = 2;

/**
 * Discount rate for US federal water-resources planning of a fiscal year: the mean yield of marketable Treasury
 * securities with 15 years or more left, to the nearest eighth of a percent (a sixteenth goes up), and at most a
 * quarter point from the rate of the year before, both in eighths: d = min(max(round(y), d1−2), d1+2). Public Law 93-251, section 80(a); 18 CFR 704.39.
 * @throws RangeError if the rate of the year before is no whole number of eighths of a percent
 */
export function planningRate(meanYield: number, previousRate: number): PlanningRate {
  const previous = Math.round(previousRate * eighthsPerUnit);
  if (Math.abs(previousRate * eighthsPerUnit - previous) > 1e-9) {
    throw new RangeError(
      `a rate of ${previousRate} in the year before; allowed: eighths of a percent, such as 5 3/8 % (43/800)`,
    );
  }
  const rounded = Math.round(meanYield * eighthsPerUnit);
  const eighths = Math.min(Math.max(rounded, previous - mostEighths), previous + mostEighths);
  return {
    rate: eighths / eighthsPerUnit,
    rounded: rounded / eighthsPerUnit,
    limited: eighths < rounded ? "rise" : eighths > rounded ? "fall" : "no",
  };
}
