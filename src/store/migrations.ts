import type { Database } from "better-sqlite3";
import { storeError } from "./errors.js";

/**
 * Statements that lead from each version of the database to the next; a step that was released never changes. Those that
 * keep digests need `knowDigests`, and take what is there for sound.
 */
const steps: readonly string[] = [
  `CREATE TABLE revision (
    id TEXT NOT NULL,
    revision INTEGER NOT NULL,
    name TEXT NOT NULL,
    saved_at TEXT NOT NULL,
    file_name TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (id, revision)
  ) STRICT;`,
  `CREATE TABLE study (
    id TEXT NOT NULL PRIMARY KEY,
    state TEXT NOT NULL CHECK (state IN ('active', 'archived', 'deleted')),
    created_at TEXT NOT NULL,
    state_changed_at TEXT NOT NULL
  ) STRICT;
  INSERT INTO study (id, state, created_at, state_changed_at)
    SELECT id, 'active', min(saved_at), min(saved_at) FROM revision GROUP BY id;
  ALTER TABLE revision RENAME TO revision_without_author;
  CREATE TABLE revision (
    id TEXT NOT NULL REFERENCES study (id) ON DELETE CASCADE,
    revision INTEGER NOT NULL CHECK (revision >= 1),
    name TEXT NOT NULL,
    saved_at TEXT NOT NULL,
    author TEXT NOT NULL,
    note TEXT NOT NULL,
    origin TEXT NOT NULL,
    file_name TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (id, revision)
  ) STRICT;
  INSERT INTO revision (id, revision, name, saved_at, author, note, origin, file_name, text)
    SELECT id, revision, name, saved_at, '', '', 'upload', file_name, text FROM revision_without_author;
  DROP TABLE revision_without_author;`,
  `CREATE TABLE issue (
    study_id TEXT NOT NULL,
    number INTEGER NOT NULL CHECK (number >= 1),
    issued_at TEXT NOT NULL,
    author TEXT NOT NULL,
    note TEXT NOT NULL,
    revision INTEGER NOT NULL CHECK (revision >= 1),
    study_name TEXT NOT NULL,
    file_name TEXT NOT NULL,
    study_text TEXT NOT NULL,
    assumptions TEXT NOT NULL,
    engine_version TEXT NOT NULL,
    seed INTEGER,
    figures TEXT NOT NULL,
    digest TEXT NOT NULL,
    pdf BLOB NOT NULL,
    PRIMARY KEY (study_id, number)
  ) STRICT;
  CREATE TRIGGER issue_comes_next BEFORE INSERT ON issue
    WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM issue WHERE study_id = NEW.study_id)
    BEGIN SELECT RAISE(ABORT, 'the number of an issued report is the next of its study'); END;
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;
  CREATE TRIGGER issue_is_not_removed BEFORE DELETE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be removed, only superseded'); END;`,
  `CREATE TABLE access_key (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE,
    locator TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('read', 'edit')),
    salt BLOB NOT NULL,
    hash BLOB NOT NULL,
    cost INTEGER NOT NULL,
    block_size INTEGER NOT NULL,
    parallelization INTEGER NOT NULL,
    added_at TEXT NOT NULL
  ) STRICT;
  CREATE TABLE access_session (
    digest BLOB NOT NULL PRIMARY KEY,
    name TEXT NOT NULL COLLATE NOCASE REFERENCES access_key (name) ON DELETE CASCADE,
    started_at INTEGER NOT NULL,
    used_at INTEGER NOT NULL
  ) STRICT;`,
  `ALTER TABLE revision ADD COLUMN digest TEXT NOT NULL DEFAULT '';
  UPDATE revision SET digest = kept_digest(id, revision, name, saved_at, author, note, origin, file_name,
    CAST(text AS BLOB));
  ALTER TABLE issue ADD COLUMN record_digest TEXT NOT NULL DEFAULT '';
  ALTER TABLE issue ADD COLUMN pdf_digest TEXT NOT NULL DEFAULT '';
  DROP TRIGGER issue_is_not_altered;
  UPDATE issue SET pdf_digest = kept_digest(pdf),
    record_digest = kept_digest(study_id, number, issued_at, author, note, revision, study_name, file_name,
      engine_version, seed, digest, CAST(study_text AS BLOB), CAST(assumptions AS BLOB), CAST(figures AS BLOB));
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;`,
  `ALTER TABLE issue ADD COLUMN board_pdf BLOB;
  DROP TRIGGER issue_is_not_altered;
  UPDATE issue SET pdf_digest = kept_digest(pdf, board_pdf) WHERE pdf_digest = kept_digest(pdf);
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;`,
  `CREATE TABLE version_name (
    id TEXT NOT NULL,
    revision INTEGER NOT NULL,
    name TEXT NOT NULL CHECK (name <> ''),
    PRIMARY KEY (id, revision),
    FOREIGN KEY (id, revision) REFERENCES revision (id, revision) ON DELETE CASCADE
  ) STRICT;`,
  `CREATE TABLE kept_record (
    digest TEXT NOT NULL PRIMARY KEY,
    text TEXT NOT NULL
  ) STRICT;`,
];

/** Tables that say who may enter this machine's studies: no part of what a backup holds or a restore replaces. */
export const accessTables: readonly string[] = ["access_key", "access_session"];

export const currentVersion = steps.length;

/**
 * Brings a database to the current version, in one transaction.
 * @throws StoreError where a newer version or another program wrote it
 */
export function migrate(database: Database): void {
  if (versionOf(database) === currentVersion) return;
  database
    .transaction(() => {
      for (const step of steps.slice(versionOf(database))) database.exec(step);
      database.pragma(`user_version = ${currentVersion}`);
    })
    .immediate();
}

/**
 * Version of a database's schema; the first was written without its number, and an empty database has 0.
 * @throws StoreError where a newer version or another program wrote it
 */
export function versionOf(database: Database): number {
  const version = Number(database.pragma("user_version", { simple: true }));
  if (version > currentVersion) throw storeError("newer", database.name);
  const tables = database
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'")
    .pluck()
    .all();
  if (tables.length === 0 && version === 0) return 0;
  if (!tables.includes("revision")) throw storeError("foreign", database.name);
  return Math.max(version, 1);
}
