import type { ReportPart } from "../report/document/sections.js";
import { type Authenticity, authenticityOf, type Findings, givenFile, type Kept } from "./authenticity.js";
import type { FigureDifference } from "./figure-differences.js";
import { methodSentences } from "./method-sentences.js";
import { NotIssuedError, type ReadIssue } from "./read-issue.js";
import { type Draw, type Recomputed, recompute } from "./recompute.js";
import type { ReadRecord } from "./record.js";

export interface Verification {
  readonly standing: Authenticity;
  /** True where nothing speaks against the report. */
  readonly stands: boolean;
  readonly answer: string;
  readonly sentences: readonly string[];
  /** Figures that do not match, the first of them. */
  readonly differences: readonly FigureDifference[];
}

/** What a file says that it is. */
export interface Claim {
  readonly digest: string;
  readonly studyId: string;
  readonly number: number;
  readonly part: ReportPart;
}

interface VerifyTools {
  /** What is kept here of what the file claims to be; of one that claims nothing, of its bytes. */
  readonly kept: (claim: Claim | undefined) => Promise<Kept> | Kept;
  readonly draw?: Draw | undefined;
  /** Computes it again, which takes most of the time. */
  readonly again?: typeof recompute;
}

const mostDifferences = 20;

/** Tells what a file is, and computes an issued report again from what is attached to it. */
export async function verifyIssue(
  pdf: Uint8Array,
  { kept, draw, again = recompute }: VerifyTools,
): Promise<Verification> {
  const given = await givenFile(pdf);
  const { issue } = given;
  if (issue instanceof NotIssuedError) return verdict(await authenticityOf(given, await kept(undefined)));
  const { digest, number, study } = issue.record;
  const claim = { digest, number, studyId: study.id, part: partOf(issue.record) };
  const findings = await authenticityOf(given, await kept(claim));
  return verdict(findings, issue, await again(issue, draw));
}

function verdict(findings: Findings, issue?: ReadIssue, again?: Recomputed): Verification {
  const { standing, answer, sentences } = findings;
  const isAuthentic = standing === "issued here" || standing === "issued by a key";
  const figuresDiffer = again?.figuresMatch === false && again.isOfThisVersion;
  const reservations = [
    ...(figuresDiffer ? ["Computed again, its figures do not match."] : []),
    ...(again?.alterations ? ["Its assumptions are not all the program’s own."] : []),
  ];
  return {
    standing,
    stands: isAuthentic && !figuresDiffer,
    answer: isAuthentic ? [answer, ...reservations].join(" ") : answer,
    sentences: [
      ...sentences,
      ...(issue ? [titleSentence(issue)] : []),
      ...(again?.sentences ?? []),
      ...(issue ? methodSentences(issue.record) : []),
    ],
    differences: again?.differences.slice(0, mostDifferences) ?? [],
  };
}

const partOf = (record: ReadRecord): ReportPart => ("part" in record ? (record.part ?? "all") : "all");

const titleSentence = ({ record }: ReadIssue): string => {
  const { number, study, issuedAt, digest } = record;
  const what = `${partOf(record) === "board" ? "the board’s part of " : ""}issue ${number}`;
  return `It calls itself ${what} of “${study.name}”, revision ${study.revision}, of ${issuedAt.slice(0, 10)}; digest ${digest}.`;
};
