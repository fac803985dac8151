import { stableJson } from "../assumptions/digest.js";
import { programVersion } from "../assumptions/version.js";
import type { AssumptionFiles } from "../assumptions/yaml-file.js";
import { methodDigest } from "../method/method-document.js";
import { renderReportBody } from "../report/document/html.js";
import type { IssueView } from "../report/document/issue-view.js";
import type { ReportPart } from "../report/document/sections.js";
import type { PrintedOdds } from "../report/odds/odds-words.js";
import { type Attachment, finishPdf } from "../report/print/finished-pdf.js";
import { editionText, printSettings } from "../report/print/paper.js";
import type { PrintSettings } from "../report/print/pdf.js";
import type { Printer } from "../report/print/printer.js";
import { resultsJson } from "../report/results/results.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { recordAtHand, recordsNamed } from "../study/records/at-hand.js";
import { contentDigest } from "./digest.js";
import {
  attachmentNames,
  type IssueContent,
  type IssueRecord,
  issueFormat,
  recordAttachment,
} from "./record.js";
import { addSignatureField } from "./signature.js";

/** A report to be frozen. */
export interface IssueDraft
  extends Pick<IssueRecord, "number" | "issuedAt" | "author" | "note" | "supersedes" | "signedBy"> {
  readonly study: IssueRecord["study"] & { readonly text: string };
}

/** What is told in it. */
interface IssuedRun {
  readonly run: StudyRun;
  readonly printedOdds: PrintedOdds | undefined;
  /** What the run's assumptions were read from. */
  readonly files: AssumptionFiles;
}

/** An issue of which both documents are yet to be printed. */
export interface PreparedIssue {
  readonly content: IssueContent;
  readonly digest: string;
  readonly toPrint: Readonly<Record<ReportPart, ToPrint>>;
}

interface ToPrint {
  readonly body: string;
  readonly settings: PrintSettings;
}

/** One document of an issue as it was printed. */
export interface PrintedPart extends Pick<PreparedIssue, "content" | "digest"> {
  readonly part: ReportPart;
  readonly printed: Uint8Array;
  /** The board's part, signed, for the full report to carry. */
  readonly boardPdf?: Uint8Array;
}

/** A frozen report with the texts that it was made from: the full report and the board's part, each signed. */
export interface MadeIssue {
  readonly record: Omit<IssueRecord, "part">;
  readonly studyText: string;
  readonly assumptions: string;
  readonly figures: string;
  readonly pdf: Uint8Array;
  readonly boardPdf: Uint8Array;
}

/** How a prepared issue comes to its two documents. */
export interface Press {
  readonly print: Printer["print"];
  readonly complete: (printed: PrintedPart) => Promise<Uint8Array>;
  readonly sign: (pdf: Uint8Array) => Promise<Uint8Array>;
}

/** Prints and signs the board's part, then the full report that carries it. @throws BrowserError */
export async function pressIssue(
  { content, digest, toPrint }: PreparedIssue,
  { print, complete, sign }: Press,
): Promise<MadeIssue> {
  const document = async (part: ReportPart, carried: Pick<PrintedPart, "boardPdf"> = {}) => {
    const { body, settings } = toPrint[part];
    return sign(await complete({ content, digest, part, printed: await print(body, settings), ...carried }));
  };
  const boardPdf = await document("board");
  return { ...textsOf({ content, digest }), boardPdf, pdf: await document("all", { boardPdf }) };
}

/** Both documents of a report as an issue, with all that is needed to compute it again attached. */
export const makeIssue = (
  draft: IssueDraft,
  what: IssuedRun,
  { print, sign }: Pick<Press, "print" | "sign">,
): Promise<MadeIssue> => pressIssue(preparedIssue(draft, what), { print, complete: completedPart, sign });

export function preparedIssue(draft: IssueDraft, what: IssuedRun): PreparedIssue {
  const content = contentOf(draft, what);
  const digest = contentDigest(content);
  const { run, printedOdds } = what;
  const edition = editionText({ revision: draft.study.revision, issue: draft.number });
  const settings = printSettings(run.document, edition);
  const bodyOf = (part: ReportPart) =>
    renderReportBody(run, printedOdds, { part, issue: issueView(content, digest, part) });
  return {
    content,
    digest,
    toPrint: { board: { body: bodyOf("board"), settings }, all: { body: bodyOf("all"), settings } },
  };
}

/** Attaches to a printed document what it was made from, and leaves room for the signature. */
export async function completedPart({ part, printed, boardPdf, ...made }: PrintedPart): Promise<Uint8Array> {
  const { record, ...texts } = textsOf(made);
  const date = new Date(record.issuedAt);
  return finishPdf(printed, {
    attachments: attachments({ ...record, part }, texts, boardPdf),
    date,
    complete: (document) => addSignatureField(document, date),
  });
}

function textsOf({
  content,
  digest,
}: Pick<PreparedIssue, "content" | "digest">): Omit<MadeIssue, "pdf" | "boardPdf"> {
  const { studyText, assumptions, figures, ...recordFields } = content;
  const record = { format: issueFormat, ...recordFields, digest } as const;
  return { record, studyText, assumptions: stableJson(assumptions), figures: stableJson(figures) };
}

function contentOf(
  { study: { text, ...study }, ...draft }: IssueDraft,
  { run, printedOdds, files }: IssuedRun,
): IssueContent {
  // Written as JSON and read again, so that the digest is that of what is attached.
  const figures: unknown = JSON.parse(stableJson(resultsJson(run, printedOdds?.odds)));
  return {
    ...draft,
    study,
    engineVersion: programVersion(),
    method: methodDigest(run.assumptions),
    seed: printedOdds?.odds.settings.seed ?? null,
    studyText: text,
    assumptions: { used: [...run.usedAssumptions].sort(), files: Object.fromEntries(files) },
    figures,
  };
}

function issueView(
  { number, issuedAt, author, note, study, supersedes, signedBy, ...content }: IssueContent,
  digest: string,
  part: ReportPart,
): IssueView {
  const day = (instant: string) => `${instant.slice(0, 10)} at ${instant.slice(11, 16)} UTC`;
  return {
    number,
    issued: author === "" ? day(issuedAt) : `${day(issuedAt)} by ${author}`,
    note,
    revision: study.revision,
    supersedes:
      supersedes === null
        ? "none before it"
        : `issue ${supersedes.number} of ${day(supersedes.issuedAt)}, which no longer stands`,
    engineVersion: content.engineVersion,
    seed: content.seed === null ? "no odds were drawn" : String(content.seed),
    digest,
    signedBy,
    method: content.method,
    attached: [...Object.values(attachmentNames), ...recordsNamed(content.studyText).map(printedRecord)]
      .filter((name) => part === "all" || name !== attachmentNames.board)
      .sort()
      .join(", "),
  };
}

/** The start of a record's digest: one whole digest is printed, that of the report. */
const printedRecord = (digest: string) => recordAttachment(`${digest.slice(0, shownDigits)}…`);
const shownDigits = 12;

function attachments(
  record: IssueRecord,
  texts: Pick<MadeIssue, "studyText" | "assumptions" | "figures">,
  boardPdf: Uint8Array | undefined,
): Attachment[] {
  const { assumptions, board, figures, issue, study } = attachmentNames;
  const attach = (name: string, description: string, text: string, type = "application/json") => ({
    ...{ name, description, type },
    bytes: new TextEncoder().encode(text),
  });
  return [
    attach(assumptions, "Assumptions used, as files of the program", texts.assumptions),
    ...(boardPdf
      ? [{ name: board, description: "The board's part, signed", type: "application/pdf", bytes: boardPdf }]
      : []),
    attach(figures, "All figures, to the cent", texts.figures),
    attach(issue, "Number, date, revision and digest of this issue", stableJson(record)),
    ...recordsNamed(texts.studyText).flatMap((digest) => {
      const record = recordAtHand(digest);
      return record === undefined
        ? []
        : [attach(recordAttachment(digest), "Record of levels of the study", record, "text/csv")];
    }),
    attach(study, "The study as its author entered it", texts.studyText, "application/yaml"),
  ];
}
