import { stableJson } from "../assumptions/digest.js";
import type { Alteration, AssumptionSet } from "../assumptions/entry.js";
import { AssumptionError, loadAssumptions, readAssumptions } from "../assumptions/load.js";
import { programVersion } from "../assumptions/version.js";
import { counted } from "../counted.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { resultsJson } from "../report/results/results.js";
import type { StudyDocument } from "../study/format/schema.js";
import type { Odds } from "../study/odds/odds.js";
import { runStudy } from "../study/prepare/compute.js";
import { InputError, sentence } from "../study/reading/problems.js";
import { readIssuedText } from "../study/reading/read.js";
import { type FigureDifference, figureDifferences, nothing } from "./figure-differences.js";
import type { ReadIssue } from "./read-issue.js";

/** Draws odds again; where there is none they are left out, and that is said. */
export type Draw = (document: StudyDocument, assumptions: AssumptionSet) => Promise<Odds>;

/** An issued report computed again from what is attached to it. */
export interface Recomputed {
  readonly figuresMatch: boolean;
  /** False where another version made it, whose figures may be others for good reasons. */
  readonly isOfThisVersion: boolean;
  /** Assumptions and sources that are not as this version ships them. */
  readonly alterations: number;
  readonly sentences: readonly string[];
  readonly differences: readonly FigureDifference[];
}

/** Computes a report again and holds every figure against what was issued. */
export async function recompute(issue: ReadIssue, draw: Draw | undefined): Promise<Recomputed> {
  const { engineVersion } = issue.record;
  const isOfThisVersion = engineVersion === programVersion();
  try {
    const found = await computedAgain(issue.content, isOfThisVersion, draw);
    return { ...found, isOfThisVersion, sentences: [...found.sentences, engineSentence(engineVersion)] };
  } catch (error) {
    const isKnown = error instanceof InputError || error instanceof AssumptionError;
    if (!isKnown) throw error;
    const problems = error instanceof InputError ? error.problems.map(sentence) : error.problems;
    const why = "The figures could not be computed again from what is attached:";
    const sentences = [why, ...problems, engineSentence(engineVersion)];
    return { figuresMatch: false, isOfThisVersion, alterations: 0, sentences, differences: [] };
  }
}

async function computedAgain(
  content: ReadIssue["content"],
  isOfThisVersion: boolean,
  draw: Draw | undefined,
): Promise<Omit<Recomputed, "isOfThisVersion">> {
  const assumptions = readAssumptions(
    new Map(Object.entries(content.assumptions.files)),
    isOfThisVersion ? undefined : loadAssumptions(assumptionsFolder),
  );
  const document = readIssuedText(content.studyText, content.study.fileName);
  const run = runStudy(document, assumptions);
  const odds = content.seed === null ? undefined : await draw?.(document, assumptions);
  const figures: unknown = JSON.parse(stableJson(resultsJson(run, odds)));
  const leftOut = odds ? notHeld : [...notHeld, "odds", "headline"];
  const { compared, differences } = figureDifferences(content.figures, figures, leftOut);
  // A later version tells more than was issued.
  const held = isOfThisVersion ? differences : differences.filter(({ issued }) => issued !== nothing);
  return {
    figuresMatch: held.length === 0,
    alterations: assumptions.alterations.length,
    sentences: [
      matchSentence(compared - differences.length + held.length, held.length),
      oddsSentence(content.seed, odds !== undefined),
      ...alteredSentences(assumptions.alterations),
    ],
    differences: held,
  };
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
