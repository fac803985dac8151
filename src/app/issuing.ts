import type { IssueDraft, MadeIssue, Press } from "../issue/make-issue.js";
import type { SigningKey } from "../issue/signing-key.js";
import type { IssueStore, KeptIssue } from "../store/issues.js";
import { requirePrintable } from "../study/reading/character-problems.js";
import type { StudyEntry } from "./study-entry.js";
import { authorFor } from "./visitor.js";

/** What is asked for: the report on a study as it is now. */
interface IssueRequest {
  readonly entry: StudyEntry;
  readonly author: string;
  readonly note: string;
}

export interface IssueParts {
  readonly issues: IssueStore;
  /** Prints a report on the study as it is, with the odds that are known, and has its documents signed. */
  readonly make: (draft: IssueDraft, sign: Press["sign"]) => Promise<MadeIssue>;
  readonly now: () => Date;
  /** Signs what is issued. */
  readonly key: SigningKey;
}

/** Others may issue the same study while a report is being printed. */
const mostAttempts = 5;

/** Prints a report under the next number of its study and keeps it. @throws as `make` does; StoreError; SigningKeyError */
export async function issueReport(request: IssueRequest, parts: IssueParts): Promise<KeptIssue> {
  requirePrintable("The issue", { author: authorFor(request.author), note: request.note });
  for (let attempt = 0; attempt < mostAttempts; attempt++) {
    const made = keptIssue(await printed(request, parts));
    if (parts.issues.keep(made)) return made;
  }
  throw new Error(`${request.entry.id} was issued by others ${mostAttempts} times meanwhile`);
}

async function printed(
  { entry, author, note }: IssueRequest,
  { issues, key, make, now }: IssueParts,
): Promise<MadeIssue> {
  const [before] = issues.list(entry.id);
  const { id, name, revision, fileName, text } = entry;
  const openKey = await key.open();
  // Loaded when it is needed: a server starts sooner without it.
  const { signPdf } = await import("../issue/signature.js");
  const draft = {
    number: (before?.number ?? 0) + 1,
    issuedAt: now().toISOString(),
    author: authorFor(author),
    note,
    study: { id, name, revision, fileName, text },
    supersedes: before ? { number: before.number, issuedAt: before.issuedAt } : null,
    signedBy: openKey.fingerprint,
  };
  return make(draft, (pdf) => signPdf(pdf, openKey));
}

function keptIssue({ record, pdf, boardPdf, ...texts }: MadeIssue): KeptIssue {
  const { study, number, issuedAt, author, note, engineVersion, seed, digest } = record;
  return {
    studyId: study.id,
    number,
    issuedAt,
    author,
    note,
    revision: study.revision,
    studyName: study.name,
    fileName: study.fileName,
    engineVersion,
    seed,
    digest,
    ...texts,
    pdf: Buffer.from(pdf),
    boardPdf: Buffer.from(boardPdf),
  };
}
