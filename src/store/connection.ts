import { statSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Database } from "better-sqlite3";
import { StoreError, storeError, tellingFaults } from "./errors.js";
import { inMemory, openDatabase } from "./open-database.js";
import { makePrivateFolder, tightenFolderOf } from "./private-files.js";

/** The way to a database that may be out of order for a while. */
export interface StoreConnection {
  /** @throws StoreError in place of what SQLite reports of the file; what the work throws itself passes */
  readonly read: <Result>(work: (database: Database) => Result) => Result;
  /** The same in one transaction that starts as a writer: all of the work is kept, or nothing. */
  readonly write: <Result>(work: (database: Database) => Result) => Result;
  readonly close: () => void;
}

export const databaseFile = (folder: string): string => join(folder, "studies.sqlite");

/**
 * Opens the database when it is first asked for, and again after it was found damaged or another file took its place:
 * once the way out was taken, nothing needs to be started anew.
 * @param folder made if need be; ":memory:" keeps nothing after closing
 */
export function storeConnection(folder: string): StoreConnection {
  const file = folder === inMemory ? inMemory : databaseFile(folder);
  let open: { readonly database: Database; readonly identity: string } | undefined;
  const close = () => {
    open?.database.close();
    open = undefined;
  };
  const atHand = (): Database => {
    if (open && identityOf(file) !== open.identity) close();
    if (!open) {
      makeFolder(file);
      open = { database: openDatabase(file), identity: identityOf(file) };
    }
    return open.database;
  };
  const read: StoreConnection["read"] = (work) => {
    try {
      return tellingFaults(file, () => work(atHand()));
    } catch (error) {
      if (error instanceof StoreError && error.fault === "damaged") close();
      throw error;
    }
  };
  return {
    read,
    write: (work) => read((database) => database.transaction(() => work(database)).immediate()),
    close,
  };
}

function identityOf(file: string): string {
  const found = file === inMemory ? undefined : statSync(file, { throwIfNoEntry: false });
  return found ? `${found.dev}/${found.ino}` : "";
}

/** The folder, and all that is in it, is for this user alone; what earlier versions left open is shut. */
function makeFolder(file: string): void {
  if (file === inMemory) return;
  try {
    makePrivateFolder(dirname(file));
  } catch (error) {
    throw storeError("read-only", file, error);
  }
  tightenFolderOf(file);
}
