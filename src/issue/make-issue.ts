import { stableJson } from "../assumptions/digest.js";
import { programVersion } from "../assumptions/version.js";
import type { AssumptionFiles } from "../assumptions/yaml-file.js";
import { methodDigest } from "../method/method-document.js";
import { renderReportBody } from "../report/document/html.js";
import type { IssueView } from "../report/document/issue-view.js";
import type { PrintedOdds } from "../report/odds/odds-words.js";
import { type Attachment, finishPdf } from "../report/print/finished-pdf.js";
import { editionText, printSettings } from "../report/print/paper.js";
import type { PrintSettings } from "../report/print/pdf.js";
import type { Printer } from "../report/print/printer.js";
import { resultsJson } from "../report/results/results.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { contentDigest } from "./digest.js";
import { attachmentNames, type IssueContent, type IssueRecord, issueFormat } from "./record.js";
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

/** An issue that is yet to be printed. */
export interface PreparedIssue {
  readonly content: IssueContent;
  readonly digest: string;
  readonly body: string;
  readonly settings: PrintSettings;
}

/** A frozen report with the texts that it was made from; its PDF has room for the signature that it waits for. */
export interface MadeIssue {
  readonly record: IssueRecord;
  readonly studyText: string;
  readonly assumptions: string;
  readonly figures: string;
  readonly pdf: Uint8Array;
}

/** Prints a report as an issue, with all that is needed to compute it again attached. @throws BrowserError */
export async function makeIssue(draft: IssueDraft, what: IssuedRun, printer: Printer): Promise<MadeIssue> {
  const prepared = preparedIssue(draft, what);
  return completedIssue(prepared, await printer.print(prepared.body, prepared.settings));
}

export function preparedIssue(draft: IssueDraft, what: IssuedRun): PreparedIssue {
  const content = contentOf(draft, what);
  const digest = contentDigest(content);
  const { run, printedOdds } = what;
  const edition = editionText({ revision: draft.study.revision, issue: draft.number });
  return {
    content,
    digest,
    body: renderReportBody(run, printedOdds, { issue: issueView(content, digest) }),
    settings: printSettings(run.document, edition),
  };
}

/** Attaches to the printed report what it was made from, and leaves room for the signature. */
export async function completedIssue(
  { content, digest }: Pick<PreparedIssue, "content" | "digest">,
  printed: Uint8Array,
): Promise<MadeIssue> {
  const { studyText, assumptions, figures, ...recordFields } = content;
  const record = { format: issueFormat, ...recordFields, digest } as const;
  const texts = { studyText, assumptions: stableJson(assumptions), figures: stableJson(figures) };
  const date = new Date(record.issuedAt);
  const pdf = await finishPdf(printed, {
    attachments: attachments(record, texts),
    date,
    complete: (document) => addSignatureField(document, date),
  });
  return { record, ...texts, pdf };
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
    assumptions: { used: [...new Set(run.usedAssumptions)].sort(), files: Object.fromEntries(files) },
    figures,
  };
}

function issueView(
  { number, issuedAt, author, note, study, supersedes, signedBy, ...content }: IssueContent,
  digest: string,
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
    attached: Object.values(attachmentNames).join(", "),
  };
}

function attachments(
  record: IssueRecord,
  texts: Pick<MadeIssue, "studyText" | "assumptions" | "figures">,
): Attachment[] {
  const attach = (
    name: string,
    description: string,
    text: string,
    type = "application/json",
  ): Attachment => ({
    name,
    type,
    description,
    bytes: new TextEncoder().encode(text),
  });
  return [
    attach(attachmentNames.assumptions, "Assumptions used, as files of the program", texts.assumptions),
    attach(attachmentNames.figures, "All figures, to the cent", texts.figures),
    attach(attachmentNames.issue, "Number, date, revision and digest of this issue", stableJson(record)),
    attach(attachmentNames.study, "The study as its author entered it", texts.studyText, "application/yaml"),
  ];
}
