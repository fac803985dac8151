import { betaQuantile } from "../risk/beta.js";

/** What is known of a share: a beta distribution, worth α + β boats of which α had the property. */
export interface ShareBelief {
  readonly alpha: number;
  readonly beta: number;
}

/** Boats looked at, and those of them that had the property: `found` of `screened`. */
export interface Counts {
  readonly screened: number;
  readonly found: number;
}

export interface ShareSummary {
  readonly mean: number;
  /** The share is below it with a chance of 5 %, and of 95 %. */
  readonly p5: number;
  readonly p95: number;
}

/** Counts or a prior that no program can have had. */
export class LearningError extends Error {}

/** Belief with a given mean that weighs as much as so many boats looked at. */
export function beliefFromMean(mean: number, equivalentSample: number): ShareBelief {
  if (!(mean > 0 && mean < 1)) {
    throw new LearningError(
      `an expected share of ${mean}; allowed: above 0 and below 1, since nothing is certain`,
    );
  }
  return checked({ alpha: mean * equivalentSample, beta: (1 - mean) * equivalentSample });
}

/**
 * Belief from the counts of a comparable program: Jeffreys' prior (½, ½) with its boats, each counted `weight` times
 * (a power prior, Ibrahim and Chen 2000): α = 1/2 + w f, β = 1/2 + w (n − f), with w 1 if its boats are like one's own,
 * near 0 if they say little about them.
 */
export function beliefFromCounts(counts: Counts, weight: number): ShareBelief {
  if (!(weight >= 0 && weight <= 1)) throw new LearningError(`a weight of ${weight}; allowed: 0 to 1`);
  checkCounts(counts);
  return {
    alpha: 1 / 2 + weight * counts.found,
    beta: 1 / 2 + weight * (counts.screened - counts.found),
  };
}

/**
 * Belief after a season: the beta distribution is conjugate to binomial counts, so α + found, β + screened − found.
 * Boats count as independent draws. What is learned of fouled boats is the share that the checks find: a check that
 * misses some leaves the true share higher.
 * @throws LearningError if more were found than screened
 */
export function learned(prior: ShareBelief, counts: Counts): ShareBelief {
  checkCounts(counts);
  const { alpha, beta } = checked(prior);
  return { alpha: alpha + counts.found, beta: beta + counts.screened - counts.found };
}

/** Mean α/(α+β), and the interval that holds the share with a chance of 90 %, 5 % on either side. */
export function summaryOf(belief: ShareBelief): ShareSummary {
  const { alpha, beta } = checked(belief);
  return {
    mean: alpha / (alpha + beta),
    p5: betaQuantile(1 / 20, alpha, beta),
    p95: betaQuantile(19 / 20, alpha, beta),
  };
}

function checked(belief: ShareBelief): ShareBelief {
  const { alpha, beta } = belief;
  if (!(alpha > 0 && beta > 0 && Number.isFinite(alpha + beta))) {
    throw new LearningError(`a prior of ${alpha} and ${beta} boats; allowed: finite, above 0`);
  }
  return belief;
}

function checkCounts({ screened, found }: Counts): void {
  for (const [what, count] of [["screened", screened] as const, ["found", found] as const]) {
    if (!Number.isSafeInteger(count) || count < 0) {
      throw new LearningError(`${count} boats ${what}; allowed: a whole number from 0`);
    }
  }
  if (found > screened) {
    throw new LearningError(
      `${found} boats found among ${screened} screened; allowed: no more than were screened`,
    );
  }
}
