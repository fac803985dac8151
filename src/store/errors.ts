import Database from "better-sqlite3";
import { PlainError } from "../plain-error.js";
import type { IssueCard, KeptStudy, RevisionCard, StudyCard } from "./records.js";

export type StoreFault = "damaged" | "locked" | "full" | "read-only" | "newer" | "foreign" | "disk";

/** The database cannot be used now. What was committed before stays; the message says the way out. */
export class StoreError extends PlainError {
  constructor(
    readonly fault: StoreFault,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

/** Someone else saved first. Nothing was overwritten. */
export class ConflictError extends Error {
  constructor(
    /** The revision that the writer had before him. */
    readonly expected: number,
    readonly latest: KeptStudy,
  ) {
    super(`"${latest.name}" has revision ${latest.revision}; the change was made to revision ${expected}.`);
  }
}

/** The study or revision is not kept here. */
export class UnknownStudyError extends Error {}

/** A deleted study takes no revisions until it is recovered. */
export class DeletedStudyError extends Error {
  constructor(readonly study: StudyCard) {
    super(`"${study.name}" was deleted on ${study.stateChangedAt.slice(0, 10)}. Recover it first.`);
  }
}

/** What is kept of a revision is not what was saved: a disk or a copy of the file lost some of it. */
export class DamagedRevisionError extends PlainError {
  constructor(
    readonly card: RevisionCard,
    /** The newest sound revision before it, if there is one. */
    readonly sound: number | undefined,
    /** Whether there is no later revision. */
    readonly isLatest: boolean,
  ) {
    const { id, name, revision } = card;
    const wayOut =
      sound === undefined
        ? "No revision before it is sound: take the study from a backup."
        : `Revision ${sound} before it is sound: ramp-and-rack export ${id} --revision ${sound} --out FILE.`;
    super(
      `Revision ${revision} of "${name}" (${id}) is damaged: it does not match the digest that was kept with it, and is not used. ${wayOut}`,
    );
  }
}

/** The same of an issued report. */
export class DamagedIssueError extends PlainError {
  constructor(
    readonly card: IssueCard,
    /** "its PDF", "its texts" */
    what: string,
  ) {
    super(
      `Issued report ${card.number} on "${card.studyName}" (${card.studyId}) is damaged as it is kept here: ${what} does not match the digest that was kept with it. Nothing of it is given out. Take it from a backup of before, or from somebody who has the file.`,
    );
  }
}

const restoring = "Put a backup in its place with the command ramp-and-rack restore FILE.";

const faultTexts: Readonly<Record<StoreFault, (file: string) => string>> = {
  damaged: (file) =>
    `The database ${file} is damaged. It was left as it is. ${restoring} It is set aside then, under a dated name beside it, where the copies are that earlier restores kept.`,
  locked: (file) =>
    `The database ${file} is locked by another program. Nothing was changed. Close that program (a database browser, a copy that is under way) and try again.`,
  full: (file) =>
    `The disk of ${file} is full. This change was not kept; all earlier revisions are. Free some space and save again.`,
  "read-only": (file) =>
    `The database ${file} cannot be written. Nothing was changed. Give this program's user the right to write the file and its folder, or set RAMP_AND_RACK_DATA to a folder where it may write.`,
  newer: (file) =>
    `The database ${file} was written by a newer version of Ramp & Rack. It was left as it is. Install that version again, or set RAMP_AND_RACK_DATA to another folder.`,
  foreign: (file) =>
    `The file ${file} is no database of Ramp & Rack. It was left as it is. Name another file or folder.`,
  disk: (file) =>
    `The disk of ${file} reports an error. This change was not kept. Check the disk; where the database is damaged: ${restoring}`,
};

export const storeError = (fault: StoreFault, file: string, cause?: unknown): StoreError =>
  new StoreError(fault, faultTexts[fault](file), { cause });

/** SQLite's primary codes: https://www.sqlite.org/rescode.html; the extended ones begin with them. */
const faults: readonly (readonly [string, StoreFault])[] = [
  ["SQLITE_CORRUPT", "damaged"],
  ["SQLITE_NOTADB", "damaged"],
  ["SQLITE_BUSY", "locked"],
  ["SQLITE_LOCKED", "locked"],
  ["SQLITE_FULL", "full"],
  ["SQLITE_READONLY", "read-only"],
  ["SQLITE_CANTOPEN", "read-only"],
  ["SQLITE_PERM", "read-only"],
  ["SQLITE_IOERR", "disk"],
];

/** Does work on a database file. @throws StoreError in place of what SQLite reports of the file */
export function tellingFaults<Result>(file: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw asStoreError(file, error);
  }
}

export function asStoreError(file: string, error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  const { code } = error;
  const fault = faults.find(([prefix]) => code.startsWith(prefix))?.[1];
  return fault ? storeError(fault, file, error) : error;
}
