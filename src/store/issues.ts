import Sqlite, { type Database } from "better-sqlite3";
import type { StoreConnection } from "./connection.js";
import { issueIsDamaged, pdfDigest, recordDigest } from "./digests.js";
import { DamagedIssueError } from "./errors.js";
import type { IssueCard, ListedIssue } from "./records.js";

export interface KeptIssue extends IssueCard {
  readonly fileName: string;
  readonly studyText: string;
  /** Files of assumptions as JSON: text by name. */
  readonly assumptions: string;
  /** Results as JSON. */
  readonly figures: string;
  readonly pdf: Uint8Array;
  /** The board's part, a document of its own; null of what was issued before it was one. */
  readonly boardPdf: Uint8Array | null;
}

/** Issued reports: none is ever altered or removed, also not with its study. All throw StoreError. */
export interface IssueStore {
  /** The newest first. */
  readonly list: (studyId: string) => ListedIssue[];
  /** @throws DamagedIssueError */
  readonly find: (studyId: string, number: number) => KeptIssue | undefined;
  /** @throws DamagedIssueError */
  readonly withDigest: (digest: string) => KeptIssue | undefined;
  /** Whether a PDF is to the byte one that is kept, full report or board's part. */
  readonly hasBytes: (pdf: Uint8Array) => boolean;
  /** The PDF that starts with all the bytes of another, which was cut off. */
  readonly startedBy: (pdf: Uint8Array) => Uint8Array | undefined;
  /** Whether a study of this id is kept here or was, as its issued reports show. */
  readonly knowsStudy: (studyId: string) => boolean;
  /** Numbers of those that are not as they were kept; reads them whole. */
  readonly damaged: (studyId: string) => number[];
  /** Keeps an issue under the number it bears. @returns false, with nothing kept, where that is not the next one */
  readonly keep: (issue: KeptIssue) => boolean;
}

const card = `study_id AS studyId, number, issued_at AS issuedAt, author, note, revision, study_name AS studyName,
  engine_version AS engineVersion, seed, digest`;
const whole = `${card}, file_name AS fileName, study_text AS studyText, assumptions, figures, pdf,
  board_pdf AS boardPdf,
  record_digest <> ${recordDigest("issue.")} AS recordIsDamaged, pdf_digest <> ${pdfDigest("issue.")} AS pdfIsDamaged`;

export function issueStore({ read, write }: StoreConnection): IssueStore {
  return {
    list: (studyId) =>
      read((database) =>
        database
          .prepare<[string], IssueCard & { readonly boardParts: number }>(
            `SELECT ${card}, board_pdf IS NOT NULL AS boardParts FROM issue WHERE study_id = ? ORDER BY number DESC`,
          )
          .all(studyId)
          .map(({ boardParts, ...each }) => ({ ...each, hasBoardPart: boardParts > 0 })),
      ),
    find: (studyId, number) =>
      read((database) =>
        sound(
          database
            .prepare<[string, number], IssueRow>(
              `SELECT ${whole} FROM issue WHERE study_id = ? AND number = ?`,
            )
            .get(studyId, number),
        ),
      ),
    withDigest: (digest) =>
      read((database) =>
        sound(
          database.prepare<[string], IssueRow>(`SELECT ${whole} FROM issue WHERE digest = ?`).get(digest),
        ),
      ),
    damaged: (studyId) =>
      read((database) =>
        database
          .prepare<[string], number>(
            `SELECT number FROM issue WHERE study_id = ? AND ${issueIsDamaged} ORDER BY number`,
          )
          .pluck()
          .all(studyId),
      ),
    ...comparing(read),
    keep: (issue) => write((database) => keep(database, issue)),
  };
}

/** Full reports and board's parts alike. */
const eachPdf = "(SELECT pdf FROM issue UNION ALL SELECT board_pdf AS pdf FROM issue)";

/** A start that is shorter may be that of any PDF. */
const shortestStart = 1024;

/** Lengths are compared first: SQLite knows them without reading what they are of. */
function comparing(read: StoreConnection["read"]): Pick<IssueStore, "hasBytes" | "startedBy" | "knowsStudy"> {
  const first = <Result>(sql: string, ...values: readonly unknown[]) =>
    read((database) =>
      database
        .prepare<unknown[], Result>(sql)
        .pluck()
        .get(...values),
    );
  return {
    hasBytes: (pdf) =>
      first(`SELECT 1 FROM ${eachPdf} WHERE length(pdf) = ? AND pdf = ?`, pdf.length, pdf) !== undefined,
    startedBy: (pdf) =>
      pdf.length < shortestStart
        ? undefined
        : first<Uint8Array>(
            `SELECT pdf FROM ${eachPdf} WHERE length(pdf) > ? AND substr(pdf, 1, ?) = ?`,
            pdf.length,
            pdf.length,
            pdf,
          ),
    knowsStudy: (id) =>
      first("SELECT 1 FROM study WHERE id = ? UNION SELECT 1 FROM issue WHERE study_id = ?", id, id) !==
      undefined,
  };
}

interface IssueRow extends KeptIssue {
  readonly recordIsDamaged: number;
  readonly pdfIsDamaged: number;
}

/** @throws DamagedIssueError */
function sound(row: IssueRow | undefined): KeptIssue | undefined {
  if (!row) return undefined;
  const { recordIsDamaged, pdfIsDamaged, ...issue } = row;
  if (recordIsDamaged !== 0) throw new DamagedIssueError(issue, "what it was made from");
  if (pdfIsDamaged !== 0) throw new DamagedIssueError(issue, "one of its PDFs");
  return issue;
}

function keep(database: Database, issue: KeptIssue): boolean {
  const insert = database.prepare<[KeptIssue]>(
    `INSERT INTO issue (study_id, number, issued_at, author, note, revision, study_name, file_name, study_text,
       assumptions, engine_version, seed, figures, digest, pdf, board_pdf, record_digest, pdf_digest)
     VALUES (@studyId, @number, @issuedAt, @author, @note, @revision, @studyName, @fileName, @studyText,
       @assumptions, @engineVersion, @seed, @figures, @digest, @pdf, @boardPdf, ${recordDigest("@")}, ${pdfDigest("@")})`,
  );
  try {
    insert.run(issue);
    return true;
  } catch (error) {
    if (error instanceof Sqlite.SqliteError && error.code === "SQLITE_CONSTRAINT_TRIGGER") return false;
    throw error;
  }
}
