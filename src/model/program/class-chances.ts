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

/** Boats of a class at a comparable program: how much its boats say of one's own, and the share of finds alive. */
interface ComparableCounts extends Counts {
  readonly weight: number;
  readonly live: number;
}

/** What a study knows of a class's chance to carry live mussels. */
interface ChanceEvidence {
  /** The chance itself as judged, or what a comparable program counted. */
  readonly entered: number | ComparableCounts;
  /** Boats of the class that the lake's own seasons looked at, and those of them found fouled. */
  readonly seasons?: Counts | undefined;
}

/** Chance of a class before and after the lake's own seasons. */
export interface ClassChance {
  /** Mean share found fouled before the seasons. */
  readonly prior: number;
  readonly seasons: Counts | undefined;
  /** What is known of the share found fouled after them; absent where the chance stands as it was entered. */
  readonly belief: ShareBelief | undefined;
  readonly posterior: ShareSummary | undefined;
  /** Of boats found fouled, those that carry live mussels. */
  readonly live: number;
  /** Chance that an arrival of the class carries live mussels: posterior mean × live. */
  readonly carriesLive: number;
}

/**
 * Chance of a class from its evidence: Beta(a, b) before, (a + k)/(a + b + n) × live after k fouled of n looked at.
 * A share entered weighs as `learning.prior-sample` boats, or as many as hold half a boat of either kind if those are
 * more (`priorWeight`), and counts all fouled boats as carrying live mussels. A share of 0 or 1 is certain and learns
 * nothing. What is learned is the share found: boats that the checks miss are
 * not in it, nor does it know of those that stayed away because of the checks.
 */
export function classChance({ entered, seasons }: ChanceEvidence, assumed: Assumed): ClassChance {
  if (typeof entered !== "number") {
    return chanceAfter(beliefFromCounts(entered, entered.weight), entered.live, seasons);
  }
  if (!seasons || isCertain(entered)) {
    return {
      prior: entered,
      seasons,
      belief: undefined,
      posterior: undefined,
      live: 1,
      carriesLive: entered,
    };
  }
  return chanceAfter(beliefFromMean(entered, priorWeight(entered, assumed)), 1, seasons);
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

function chanceAfter(prior: ShareBelief, live: number, seasons: Counts | undefined): ClassChance {
  const belief = seasons ? learned(prior, seasons) : prior;
  const posterior = summaryOf(belief);
  return {
    prior: prior.alpha / (prior.alpha + prior.beta),
    seasons,
    belief,
    posterior,
    live,
    carriesLive: posterior.mean * live,
  };
}
