import { randomUUID } from "node:crypto";
import { renameSync, rmSync } from "node:fs";
import type { Database } from "better-sqlite3";
import { companions } from "./database-companions.js";
import { type DamagedRows, damagedRows } from "./digests.js";
import { asStoreError, storeError } from "./errors.js";
import { accessTables, currentVersion, versionOf } from "./migrations.js";
import { checkSound, openAsItIs } from "./open-database.js";
import { makePrivateFile } from "./private-files.js";

/** How much a database holds. */
export interface Contents {
  readonly studies: number;
  readonly revisions: number;
  /** What of it is not as it was saved. It is copied as it is, and told of wherever it is read. */
  readonly damaged: DamagedRows;
}

/**
 * Copies a database in one consistent state while others read and write it, and checks the copy.
 * @param target is not there until the copy is whole and sound, and for this user alone; a file of that name is replaced
 * @throws StoreError
 */
export async function backUp(source: string, target: string): Promise<Contents> {
  const partial = `${target}.${randomUUID()}.part`;
  try {
    await copyDatabase(source, partial);
    const contents = checkedCopy(partial);
    renameSync(partial, target);
    return contents;
  } finally {
    for (const ending of ["", ...companions]) rmSync(partial + ending, { force: true });
  }
}

/** Copies a database as it is. @throws StoreError */
export async function copyDatabase(source: string, target: string): Promise<void> {
  const database = openAsItIs(source);
  try {
    makePrivateFile(target);
    await database.backup(target);
  } catch (error) {
    throw asStoreError(target, error);
  } finally {
    database.close();
  }
}

function checkedCopy(file: string): Contents {
  const copy = openAsItIs(file);
  try {
    // One file is the whole copy: nothing stays in a log beside it.
    copy.pragma("journal_mode = DELETE");
    forgetAccess(copy);
    checkWhole(copy);
    return contentsOf(copy);
  } finally {
    copy.close();
  }
}

/** A backup leaves the machine more easily than the database: it takes no access keys along. */
function forgetAccess(copy: Database): void {
  // Rows that were removed stay readable in the file otherwise.
  copy.pragma("secure_delete = ON");
  const tables = copy
    .prepare<[], string>("SELECT name FROM sqlite_schema WHERE type = 'table'")
    .pluck()
    .all();
  for (const name of accessTables) if (tables.includes(name)) copy.exec(`DELETE FROM ${name}`);
}

/** @throws StoreError where a page, an index or a reference is not as it should be */
export function checkWhole(database: Database): void {
  checkSound(database, "integrity_check");
  const astray: unknown = database.pragma("foreign_key_check");
  if (Array.isArray(astray) && astray.length > 0) throw storeError("damaged", database.name, astray);
}

/** The table of revisions is in every version. */
export function contentsOf(database: Database): Contents {
  const counts = database
    .prepare<[], Omit<Contents, "damaged">>(
      "SELECT count(DISTINCT id) AS studies, count(*) AS revisions FROM revision",
    )
    .get();
  // Earlier versions kept no digests.
  const damaged =
    versionOf(database) === currentVersion ? damagedRows(database) : { revisions: [], issues: [] };
  return { studies: 0, revisions: 0, ...counts, damaged };
}
