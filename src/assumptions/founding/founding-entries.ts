import { estimatedFigures, estimatedIds } from "../../model/founding/estimated.js";
import { countsWithout, foundingEstimate } from "../../model/founding/founding-estimate.js";
import { register } from "../../model/register/register.js";
import type { Assumption } from "../entry.js";
import type { FoundingEvidence } from "./evidence.js";
import { evidenceFile } from "./places.js";
import { estimatedWords } from "./words.js";

/**
 * The assumptions that are estimated from published counts. Each estimate is made once.
 * @param without ids of regions that are left out
 */
export function foundingEntries(evidence: FoundingEvidence, without: readonly string[]): Assumption[] {
  const ofEvidence = made.get(evidence) ?? new Map<string, Assumption[]>();
  made.set(evidence, ofEvidence);
  const left = [...new Set(without)].sort().join();
  const entries = ofEvidence.get(left) ?? entriesFrom(evidence, without);
  ofEvidence.set(left, entries);
  return entries;
}

const made = new WeakMap<FoundingEvidence, Map<string, Assumption[]>>();

function entriesFrom(evidence: FoundingEvidence, without: readonly string[]): Assumption[] {
  const estimate = foundingEstimate(countsWithout(evidence, without));
  const figures = estimatedFigures(estimate);
  const held = { ...evidence, regions: evidence.regions.filter(({ id }) => !without.includes(id)) };
  const left = evidence.regions.filter(({ id }) => without.includes(id)).map(({ name }) => name);
  const leftOut = left.length > 0 ? ` Left out: ${left.join(", ")}.` : "";
  const words = estimatedWords(held, estimate);
  return estimatedIds.map((id) => {
    const { p10, p50, p90 } = figures[id];
    const { title, basis, counts } = words[id];
    return {
      id,
      title,
      unit: register[id].unit,
      value: rounded(p50),
      low: rounded(p10),
      high: rounded(p90),
      basis,
      source: evidence.source,
      note: `Estimated from the counts in ${evidenceFile}: ${counts}.${leftOut}`,
      distribution: "lognormal",
    };
  });
}

const digits = 3;

/** To fewer digits than machines may differ in, so that the same counts give the same figure on all of them. */
const rounded = (value: number) => Number(value.toPrecision(digits));
