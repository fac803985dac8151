import type { Assumed } from "../assumed.js";
import {
  beliefFromCounts,
  beliefFromMean,
  type Counts,
  learned,
  type ShareBelief,
  type ShareSummary,
  summaryOf,
} from "./learning.js";

/** Boats of a class at a comparable program, and how much its boats say of one's own. */
interface ComparableCounts extends Counts {
  readonly weight: number;
}

/** What a study knows of the share of a class's boats that are fouled. */
interface ChanceEvidence {
  /** The share itself as judged, or what a comparable program counted. */
  readonly entered: number | ComparableCounts;
  /** Boats of the class that the lake's own seasons looked at, and those of them found fouled. */
  readonly seasons?: Counts | undefined;
}

/** Fouled share of a class before and after the lake's own seasons. */
export interface ClassChance {
  /** Mean share found fouled before the seasons. */
  readonly prior: number;
  readonly seasons: Counts | undefined;
  /** What is known of the share found fouled after them; absent where the chance stands as it was entered. */
  readonly belief: ShareBelief | undefined;
  readonly posterior: ShareSummary | undefined;
  /** Share of its launches that are fouled: posterior mean. */
  readonly fouled: number;
}

/**
 * Fouled share of a class from its evidence: Beta(a, b) before, (a + k)/(a + b + n) after k fouled of n looked at.
 * A share entered weighs as `learning.prior-sample` boats, or as many as hold half a boat of either kind if those are
 * more (`priorWeight`). A share of 0 or 1 is certain and learns nothing. What is learned is the share found: boats that the checks miss are
 * not in it, nor does it know of those that stayed away because of the checks.
 */
export function classChance({ entered, seasons }: ChanceEvidence, assumed: Assumed): ClassChance {
  if (typeof entered !== "number") {
    return chanceAfter(beliefFromCounts(entered, entered.weight), seasons);
  }
  if (!seasons || isCertain(entered)) {
    return {
      prior: entered,
      seasons,
      belief: undefined,
      posterior: undefined,
      fouled: entered,
    };
  }
  return chanceAfter(beliefFromMean(entered, priorWeight(entered, assumed)), seasons);
}

/** A share that no count can change. */
export const isCertain = (share: number): boolean => share === 0 || share === 1;

/**
 * Boats that an entered share weighs as much as. With less than half a boat of either kind, as in Jeffreys' prior, a
 * rare share would sink to next to nothing by a first season without finds, and jump by a single one.
 */
function priorWeight(share: number, assumed: Assumed): number {
  return Math.max(assumed("learning.prior-sample"), 1 / 2 / Math.min(share, 1 - share));
}

function chanceAfter(prior: ShareBelief, seasons: Counts | undefined): ClassChance {
  const belief = seasons ? learned(prior, seasons) : prior;
  const posterior = summaryOf(belief);
  return {
    prior: prior.alpha / (prior.alpha + prior.beta),
    seasons,
    belief,
    posterior,
    fouled: posterior.mean,
  };
}
