import type { MadeIssue } from "../../src/issue/make-issue.js";
import type { KeptIssue } from "../../src/store/issues.js";

/** An issue as it is kept. */
export function keptAs({ record, pdf, boardPdf, ...texts }: MadeIssue): KeptIssue {
  const { study, number, issuedAt, author, note, engineVersion, seed, digest } = record;
  const about = {
    studyId: study.id,
    studyName: study.name,
    revision: study.revision,
    fileName: study.fileName,
  };
  return {
    ...about,
    number,
    issuedAt,
    author,
    note,
    engineVersion,
    seed,
    digest,
    ...texts,
    pdf: Buffer.from(pdf),
    boardPdf: Buffer.from(boardPdf),
  };
}
