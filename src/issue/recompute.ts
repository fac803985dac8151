import { stableJson } from "../assumptions/digest.js";
import type { AssumptionSet } from "../assumptions/entry.js";
import { AssumptionError, readAssumptions } from "../assumptions/load.js";
import type { Alteration } from "../assumptions/shipped.js";
import { programVersion } from "../assumptions/version.js";
import { counted } from "../counted.js";
import { resultsJson } from "../report/results.js";
import { runStudy } from "../study/compute.js";
import type { Odds } from "../study/odds.js";
import { InputError, sentence } from "../study/problems.js";
import { readIssuedText } from "../study/read.js";
import type { StudyDocument } from "../study/schema.js";
import { type FigureDifference, figureDifferences } from "./figure-differences.js";
import type { ReadIssue } from "./read-issue.js";

/** Draws odds again; where there is none they are left out, and that is said. */
export type Draw = (document: StudyDocument, assumptions: AssumptionSet) => Promise<Odds>;

/** An issued report computed again from what is attached to it. */
export interface Recomputed {
  readonly figuresMatch: boolean;
  readonly sentences: readonly string[];
  readonly differences: readonly FigureDifference[];
}

/** Computes a report again and holds every figure against what was issued. */
export async function recompute(issue: ReadIssue, draw: Draw | undefined): Promise<Recomputed> {
  const { content, record } = issue;
  try {
    const assumptions = readAssumptions(new Map(Object.entries(content.assumptions.files)));
    const document = readIssuedText(content.studyText, content.study.fileName);
    const run = runStudy(document, assumptions);
    const odds = content.seed === null ? undefined : await draw?.(document, assumptions);
    const figures: unknown = JSON.parse(stableJson(resultsJson(run, odds)));
    const leftOut = odds ? notHeld : [...notHeld, "odds"];
    const { compared, differences } = figureDifferences(content.figures, figures, leftOut);
    return {
      figuresMatch: differences.length === 0,
      sentences: [
        matchSentence(compared, differences.length),
        oddsSentence(content.seed, odds !== undefined),
        engineSentence(record.engineVersion),
        ...alteredSentences(assumptions.alterations),
      ],
      differences,
    };
  } catch (error) {
    if (error instanceof InputError) return refused(error.problems.map(sentence), record.engineVersion);
    if (error instanceof AssumptionError) return refused(error.problems, record.engineVersion);
    throw error;
  }
}

/** What differs between versions by itself; it is told apart. */
const notHeld = ["alteredAssumptions"];

const mostAlterations = 30;

function alteredSentences(alterations: readonly Alteration[]): string[] {
  if (alterations.length === 0) return [`Its assumptions are those that version ${programVersion()} ships.`];
  const left = alterations.length - mostAlterations;
  return [
    `Its assumptions are not those that version ${programVersion()} ships:`,
    ...alterations
      .slice(0, mostAlterations)
      .map(({ what, found, shipped }) => `${what}: ${found}; as shipped, ${shipped}.`),
    ...(left > 0 ? [`${left} more.`] : []),
  ];
}

const refused = (problems: readonly string[], issuedBy: string): Recomputed => ({
  figuresMatch: false,
  sentences: [
    "The figures could not be computed again from what is attached:",
    ...problems,
    engineSentence(issuedBy),
  ],
  differences: [],
});

function matchSentence(compared: number, differing: number): string {
  if (differing === 0) {
    return `Computed again, all ${counted(compared, "figure")} match, amounts to the cent.`;
  }
  const verb = differing === 1 ? "does" : "do";
  return `Computed again, ${differing.toLocaleString("en-US")} of ${counted(compared, "figure")} ${verb} not match.`;
}

function oddsSentence(seed: number | null, wereDrawn: boolean): string {
  if (seed === null) return "No odds were drawn for it.";
  const drawn = wereDrawn ? "were drawn again" : "were not drawn again here; the command “verify” does that";
  return `Its odds, of seed ${seed}, ${drawn}.`;
}

function engineSentence(issued: string): string {
  const now = programVersion();
  return issued === now
    ? `Version ${now} of the program made it, and computed it again.`
    : `Version ${issued} of the program made it; version ${now} computed it again. Figures that differ may come from that.`;
}
