import type { LakeYears } from "../../model/founding/evidence.js";
import {
  countsWithout,
  type FoundingEstimate,
  foundingEstimate,
} from "../../model/founding/founding-estimate.js";
import { type LeftOut, lakeYearsLeftOut, regionsLeftOut } from "../../model/founding/leave-one-out.js";
import type { FoundingEvidence } from "./evidence.js";

/** What the counts say, and each region and each group of lakes held against what the others say of it. */
export interface FoundingBacktest {
  readonly estimate: FoundingEstimate;
  /** In the order of the evidence, without the regions that are left out. */
  readonly regions: readonly LeftOut[];
  readonly lakes: readonly LeftOut[];
}

const made = new WeakMap<FoundingEvidence, Map<string, FoundingBacktest>>();

/**
 * Worked out once for the same counts.
 * @param without ids of regions that are left out
 */
export function foundingBacktest(evidence: FoundingEvidence, without: readonly string[]): FoundingBacktest {
  const ofEvidence = made.get(evidence) ?? new Map<string, FoundingBacktest>();
  made.set(evidence, ofEvidence);
  const left = [...new Set(without)].sort().join();
  const backtest = ofEvidence.get(left) ?? backtestOf(evidence, without);
  ofEvidence.set(left, backtest);
  return backtest;
}

const estimatedGroups: ReadonlyArray<LakeYears["group"]> = ["open", "inspected"];

function backtestOf(evidence: FoundingEvidence, without: readonly string[]): FoundingBacktest {
  const counts = countsWithout(evidence, without);
  return {
    estimate: foundingEstimate(counts),
    regions: regionsLeftOut(counts),
    lakes: estimatedGroups.flatMap((group) => lakeYearsLeftOut(counts, group)),
  };
}
