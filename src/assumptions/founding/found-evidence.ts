import type { Assumption, Source } from "../entry.js";
import { type AssumptionFiles, readYaml } from "../yaml-file.js";
import type { FoundingEvidence } from "./evidence.js";
import { foundingEntries } from "./founding-entries.js";
import { evidenceFile } from "./places.js";
import { readEvidence, sourceProblems } from "./read-evidence.js";

/** Published counts with the assumptions that are estimated from them. */
export interface EvidenceFound {
  readonly evidence: FoundingEvidence;
  readonly entries: readonly Assumption[];
}

/**
 * The published counts of a folder with what is estimated from them; what is wrong with them is added to `problems`.
 * @param later the counts of this version, in place of those of an earlier one that had none
 */
export function evidenceOf(
  files: AssumptionFiles,
  sources: ReadonlyMap<string, Source>,
  later: FoundingEvidence | undefined,
  problems: string[],
): EvidenceFound | undefined {
  const evidence = later && !files.has(evidenceFile) ? later : evidenceIn(files, sources, problems);
  if (evidence === undefined) return undefined;
  try {
    return { evidence, entries: foundingEntries(evidence, []) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    problems.push(
      `${evidenceFile}: no rate between 1e-8 and 1 explains its counts together; allowed: foundings that the boats of their regions, or the lakes of their rows, can have had. Correct the counts.`,
    );
    return undefined;
  }
}

/** Texts that were read before: the same files are read for every report. */
const readBefore = new Map<string, FoundingEvidence>();
const mostRemembered = 8;

function evidenceIn(
  files: AssumptionFiles,
  sources: ReadonlyMap<string, Source>,
  problems: string[],
): FoundingEvidence | undefined {
  const text = files.get(evidenceFile) ?? "";
  const known = readBefore.get(text);
  if (known) {
    problems.push(...sourceProblems(known, sources));
    return known;
  }
  const evidence = readEvidence(readYaml(files, evidenceFile, problems), sources, problems);
  if (readBefore.size >= mostRemembered) readBefore.clear();
  if (evidence) readBefore.set(text, evidence);
  return evidence;
}
