import type { AssumptionSet } from "../assumptions/entry.js";
import { AssumptionError, readAssumptions } from "../assumptions/load.js";
import { resultsJson } from "../report/results.js";
import { runStudy } from "../study/compute.js";
import type { Odds } from "../study/odds.js";
import { InputError, sentence } from "../study/problems.js";
import { readStudyText } from "../study/read.js";
import type { StudyDocument } from "../study/schema.js";
import { stableJson } from "./digest.js";
import { engineVersion } from "./engine-version.js";
import { type FigureComparison, type FigureDifference, figureDifferences } from "./figure-differences.js";
import { NotIssuedError, type ReadIssue, readIssue } from "./read-issue.js";

export interface Verification {
  /** True where nothing speaks against the report. */
  readonly stands: boolean;
  readonly answer: string;
  readonly sentences: readonly string[];
  /** Figures that do not match, the first of them. */
  readonly differences: readonly FigureDifference[];
}

export interface VerifyTools {
  /** The PDF that was kept under a digest, where reports are issued. */
  readonly kept?: (digest: string) => Uint8Array | undefined;
  /** Draws odds again; without it they are left out, and that is said. */
  readonly draw?: (document: StudyDocument, assumptions: AssumptionSet) => Promise<Odds>;
}

const mostDifferences = 20;

/** Computes an issued report again from what is attached to it, and tells whether its figures match. */
export async function verifyIssue(pdf: Uint8Array, tools: VerifyTools = {}): Promise<Verification> {
  try {
    const issue = await readIssue(pdf);
    const again = await recomputed(issue, tools);
    return verdict(issue, again, keptText(pdf, issue, tools));
  } catch (error) {
    if (!(error instanceof NotIssuedError)) throw error;
    return { stands: false, answer: error.message, sentences: [], differences: [] };
  }
}

type Recomputed =
  | (FigureComparison & { readonly withOdds: boolean })
  | { readonly refused: readonly string[] };

async function recomputed({ content }: ReadIssue, { draw }: VerifyTools): Promise<Recomputed> {
  try {
    const assumptions = readAssumptions(new Map(Object.entries(content.assumptions.files)));
    const document = readStudyText(content.studyText, content.study.fileName);
    const run = runStudy(document, assumptions);
    const withOdds = content.seed !== null && draw !== undefined;
    const odds = withOdds ? await draw(document, assumptions) : undefined;
    const figures: unknown = JSON.parse(stableJson(resultsJson(run, odds)));
    return { ...figureDifferences(content.figures, figures, withOdds ? [] : ["odds"]), withOdds };
  } catch (error) {
    if (error instanceof InputError) return { refused: error.problems.map(sentence) };
    if (error instanceof AssumptionError) return { refused: error.problems };
    throw error;
  }
}

interface KeptText {
  readonly isSame: boolean;
  readonly text: string;
}

function keptText(pdf: Uint8Array, { record }: ReadIssue, { kept }: VerifyTools): KeptText | undefined {
  if (!kept) return undefined;
  const found = kept(record.digest);
  if (!found) {
    return {
      isSame: true,
      text: "No report of this digest is kept here: it was issued elsewhere, or not at all.",
    };
  }
  return Buffer.compare(found, pdf) === 0
    ? { isSame: true, text: "The file is to the byte the one that was issued and is kept here." }
    : { isSame: false, text: "The file is not the one that was issued and is kept here under this digest." };
}

function verdict(issue: ReadIssue, again: Recomputed, kept: KeptText | undefined): Verification {
  const { attachmentsStand, pagesStand, record } = issue;
  const figuresMatch = !("refused" in again) && again.differences.length === 0;
  const stands = attachmentsStand && pagesStand && figuresMatch && kept?.isSame !== false;
  return {
    stands,
    answer: stands
      ? "The report stands: computed again, its figures match."
      : "The report does not stand as it is.",
    sentences: [
      `Issue ${record.number} of “${record.study.name}”, revision ${record.study.revision}, of ${record.issuedAt.slice(0, 10)}; digest ${record.digest}.`,
      attachmentsStand
        ? "What is attached is what the digest was made for."
        : "What is attached was altered after the report was issued: its digest is another.",
      pagesStand
        ? "The pages are as they were issued."
        : "The pages were altered after the report was issued, or marked by a reader’s program.",
      ...figureSentences(issue, again),
      engineSentence(record.engineVersion),
      ...(kept ? [kept.text] : []),
    ],
    differences: "refused" in again ? [] : again.differences.slice(0, mostDifferences),
  };
}

function figureSentences({ content }: ReadIssue, again: Recomputed): string[] {
  if ("refused" in again) {
    return ["The figures could not be computed again from what is attached:", ...again.refused];
  }
  const { compared, differences } = again;
  const count = compared.toLocaleString("en-US");
  const match =
    differences.length === 0
      ? `All ${count} figures match, amounts to the cent.`
      : `${differences.length.toLocaleString("en-US")} of ${count} figures ${differences.length === 1 ? "does" : "do"} not match.`;
  if (content.seed === null) return [match, "No odds were drawn for it."];
  const drawn = again.withOdds
    ? "were drawn again"
    : "were not drawn again here; the command “verify” does that";
  return [match, `Its odds, of seed ${content.seed}, ${drawn}.`];
}

function engineSentence(issued: string): string {
  const now = engineVersion();
  return issued === now
    ? `Version ${now} of the program made it, and computed it again.`
    : `Version ${issued} of the program made it; version ${now} computed it again. Figures that differ may come from that.`;
}
