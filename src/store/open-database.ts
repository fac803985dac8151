import { statSync } from "node:fs";
import Database from "better-sqlite3";
import { mend } from "./database-repair.js";
import { knowDigests } from "./digests.js";
import { storeError, tellingFaults } from "./errors.js";
import { currentVersion, migrate, versionOf } from "./migrations.js";
import { needNativePart } from "./native-part.js";
import { makePrivateFile } from "./private-files.js";

/** Milliseconds for which a writer waits for another. */
const patience = 5000;

export const inMemory = ":memory:";

/**
 * Opens a database whose commits last, checked and at the current version.
 * @param file is made if need be
 * @throws StoreError
 */
export function openDatabase(file: string): Database.Database {
  return opened(file, (database) => {
    checkSound(database, "quick_check");
    database.pragma("journal_mode = WAL");
    database.pragma("synchronous = FULL");
    database.pragma("foreign_keys = ON");
    migrate(database);
    mend(database);
    provesWritable(database);
  });
}

/** Opens a database of this program that exists, of any version, and changes nothing. @throws StoreError */
export function openAsItIs(file: string): Database.Database {
  return opened(
    file,
    (database) => {
      checkSound(database, "quick_check");
      if (versionOf(database) === 0) throw storeError("foreign", file);
    },
    { fileMustExist: true },
  );
}

function opened(
  file: string,
  prepare: (database: Database.Database) => void,
  options: Database.Options = {},
): Database.Database {
  needNativePart();
  return tellingFaults(file, () => {
    refuseEmptied(file);
    if (file !== inMemory && !options.fileMustExist) makePrivateFile(file);
    const database = new Database(file, { timeout: patience, ...options });
    try {
      knowDigests(database);
      prepare(database);
      return database;
    } catch (error) {
      database.close();
      throw error;
    }
  });
}

/** SQLite takes a file of no bytes for a new database, although it may be one that was cut off. */
function refuseEmptied(file: string): void {
  if (file === inMemory) return;
  if (statSync(file, { throwIfNoEntry: false })?.size === 0) throw storeError("damaged", file);
}

/** @throws StoreError; the quick check leaves out that indices agree with their tables */
export function checkSound(database: Database.Database, check: "quick_check" | "integrity_check"): void {
  const found = database.pragma(check, { simple: true });
  if (found !== "ok") throw storeError("damaged", database.name, found);
}

/** SQLite opens a file that it may not write without a word. */
function provesWritable(database: Database.Database): void {
  if (database.readonly) throw storeError("read-only", database.name);
  // With a write-ahead log left behind even a writer's transaction begins there: only a change tells.
  database.exec("BEGIN IMMEDIATE");
  try {
    database.pragma(`user_version = ${currentVersion}`);
  } finally {
    if (database.inTransaction) database.exec("ROLLBACK");
  }
}
