import { type ComparedText, textOf } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { assumptionsSchema } from "../../issue/record.js";
import { DeletedStudyError } from "../../store/errors.js";
import type { IssueStore, KeptIssue } from "../../store/issues.js";
import { NotFoundError } from "../explain.js";

/** One side of a comparison: a study as it is, an earlier revision, or a report that was issued. */
export interface ComparedSide {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  /** How an address names it: "marina-lake", "marina-lake@3", "marina-lake@issue-2". */
  readonly reference: string;
  /** What it is called beside the other side of the same study. */
  readonly short: string;
  readonly href: string;
  readonly detail: string;
  readonly study: ComparedText;
}

export interface ComparedSources {
  readonly studies: Studies;
  readonly issues: IssueStore;
}

/** @returns undefined where nothing is named @throws NotFoundError, DeletedStudyError */
export function comparedSide(
  reference: string,
  { studies, issues }: ComparedSources,
): ComparedSide | undefined {
  if (reference === "") return undefined;
  const [, id = "", revision, issue] = /^([^@]+)(?:@(\d{1,9})|@issue-(\d{1,9}))?$/.exec(reference) ?? [];
  if (issue !== undefined) {
    const found = issues.find(id, Number(issue));
    if (!found) throw new NotFoundError();
    studies.bringRecords(found.studyText);
    return issueSide(found);
  }
  const entry = revision === undefined ? studies.find(id) : studies.revision(id, Number(revision));
  if (!entry) throw new NotFoundError();
  if (entry.state === "deleted") throw new DeletedStudyError(entry);
  return entrySide(entry);
}

function entrySide(entry: StudyEntry): ComparedSide {
  const { id, name, isExample, revision, savedAt, author } = entry;
  const standing = isExample ? "invented example" : `revision ${revision}, ${savedAt.slice(0, 10)}`;
  return {
    id,
    revision,
    name,
    reference: isExample ? id : `${id}@${revision}`,
    short: `Revision ${revision}`,
    href: isExample ? `/studies/${id}` : `/studies/${id}/revisions/${revision}`,
    detail: [standing, author].filter(Boolean).join(", "),
    study: textOf(entry),
  };
}

/** As it was issued: with the assumptions of then. */
function issueSide(issue: KeptIssue): ComparedSide {
  const { studyId, number, revision, studyName, issuedAt, author, note } = issue;
  return {
    id: studyId,
    revision,
    name: studyName,
    reference: `${studyId}@issue-${number}`,
    short: `Issue ${number}`,
    href: `/studies/${studyId}/issues/${number}.pdf`,
    detail: [`issue ${number} of ${issuedAt.slice(0, 10)}`, `revision ${revision}`, author, note]
      .filter(Boolean)
      .join(", "),
    study: {
      text: issue.studyText,
      fileName: issue.fileName,
      files: assumptionsSchema.parse(JSON.parse(issue.assumptions)).files,
    },
  };
}
