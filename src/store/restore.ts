import { existsSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Database } from "better-sqlite3";
import { backUp, type Contents, checkWhole, contentsOf, copyDatabase } from "./backup.js";
import { companions } from "./database-companions.js";
import { StoreError, tellingFaults } from "./errors.js";
import { accessTables } from "./migrations.js";
import { openDatabase } from "./open-database.js";
import { makePrivateFolder, tightenFolderOf } from "./private-files.js";

interface Restored extends Contents {
  /** Where the content from before is; absent where there was none. */
  readonly before: string | undefined;
}

/**
 * Puts the content of a backup in place of that of a database, which others may have open: they see all of the one or
 * all of the other. A damaged database is set aside instead.
 * @throws StoreError, with the database as it was
 */
export async function restore(backup: string, live: string, when: Date): Promise<Restored> {
  const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-restore-"));
  try {
    const checked = join(folder, "backup.sqlite");
    await fetchBackup(backup, checked);
    makePrivateFolder(dirname(live));
    tightenFolderOf(live);
    const aside = besideOf(live, when);
    const isNew = !existsSync(live);
    const { database, damaged } = openOrSetAside(live, aside("damaged"));
    try {
      if (isNew || damaged) return { ...replaceContent(database, checked), before: damaged };
      const before = aside("before-restore");
      return { ...(await replaceKeeping(database, checked, before)), before };
    } finally {
      database.close();
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A copy of the backup at the current version, checked whole. */
async function fetchBackup(backup: string, copy: string): Promise<void> {
  try {
    await copyDatabase(backup, copy);
    const database = openDatabase(copy);
    try {
      checkWhole(database);
    } finally {
      database.close();
    }
  } catch (error) {
    if (!(error instanceof StoreError && error.fault === "damaged")) throw error;
    const message = `The backup ${backup} is damaged or no backup. What is kept was left as it is. Use another backup.`;
    throw new StoreError("damaged", message, { cause: error });
  }
}

/** A dated name beside the database that no file has, told by what it is for; a clock may be set back. */
const besideOf = (live: string, when: Date) => (what: string) => {
  const stem = live.replace(
    /(\.sqlite)?$/,
    `-${what}-${when.toISOString().replaceAll(":", "-").slice(0, 19)}`,
  );
  for (let number = 1; ; number++) {
    const name = number === 1 ? `${stem}.sqlite` : `${stem}-${number}.sqlite`;
    if (!existsSync(name)) return name;
  }
};

/** @returns the database, an empty one where a damaged one had to be set aside */
function openOrSetAside(live: string, aside: string): { database: Database; damaged: string | undefined } {
  try {
    return { database: openDatabase(live), damaged: undefined };
  } catch (error) {
    if (!(error instanceof StoreError && error.fault === "damaged")) throw error;
  }
  for (const ending of ["", ...companions]) {
    if (existsSync(live + ending)) renameSync(live + ending, aside + ending);
  }
  return { database: openDatabase(live), damaged: aside };
}

/** Nobody else writes from before the safety copy until the end, so that the copy misses nothing. */
async function replaceKeeping(database: Database, backup: string, before: string): Promise<Contents> {
  database.prepare("ATTACH ? AS backup").run(backup);
  tellingFaults(database.name, () => database.exec("BEGIN IMMEDIATE"));
  try {
    await backUp(database.name, before);
    tellingFaults(database.name, () => {
      copyTables(database);
      database.exec("COMMIT");
    });
    return contentsOf(database);
  } catch (error) {
    if (database.inTransaction) database.exec("ROLLBACK");
    throw error;
  }
}

function replaceContent(database: Database, backup: string): Contents {
  database.prepare("ATTACH ? AS backup").run(backup);
  tellingFaults(database.name, () => database.transaction(() => copyTables(database)).immediate());
  return contentsOf(database);
}

/**
 * Both sides are at the current version, so their tables and triggers are the same. Triggers guard rows against changes,
 * not a database against being replaced: they are away meanwhile. Who may enter stays as it is: an old backup would let
 * in again whose key was removed.
 */
function copyTables(database: Database): void {
  database.pragma("defer_foreign_keys = ON");
  const tables = partsOf(database, "table").filter(({ name }) => !accessTables.includes(name));
  const triggers = partsOf(database, "trigger");
  for (const { name } of triggers) database.exec(`DROP TRIGGER main."${name}"`);
  for (const { name } of tables) database.exec(`DELETE FROM main."${name}"`);
  for (const { name } of tables) {
    database.exec(`INSERT INTO main."${name}" SELECT * FROM backup."${name}"`);
  }
  for (const { sql } of triggers) database.exec(sql);
}

const partsOf = (database: Database, type: "table" | "trigger") =>
  database
    .prepare<[string], { readonly name: string; readonly sql: string }>(
      "SELECT name, sql FROM main.sqlite_schema WHERE type = ? AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'",
    )
    .all(type);
