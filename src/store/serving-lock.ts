import { join } from "node:path";
import Database from "better-sqlite3";
import { StoreError, storeError } from "./errors.js";
import { needNativePart } from "./native-part.js";
import { makePrivateFile, makePrivateFolder } from "./private-files.js";

/** Held by the one server of a data folder. */
export interface ServingLock {
  readonly release: () => void;
}

/**
 * Takes the lock of a data folder. The operating system holds it for this process and lets it go however the process
 * ends, so that none stays behind after a crash. Commands do not take it: they may work beside a server.
 * @throws StoreError: "locked" where another server has it
 */
export function lockForServing(folder: string): ServingLock {
  needNativePart();
  const file = join(folder, "serving.lock");
  try {
    makePrivateFolder(folder);
  } catch (error) {
    throw storeError("read-only", file, error);
  }
  let database: Database.Database | undefined;
  try {
    makePrivateFile(file);
    database = new Database(file, { timeout: 0 });
    database.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    database?.close();
    throw lockError(folder, file, error);
  }
  const held = database;
  return { release: () => held.close() };
}

function lockError(folder: string, file: string, error: unknown): unknown {
  if (!(error instanceof Database.SqliteError)) return error;
  if (!error.code.startsWith("SQLITE_BUSY")) return storeError("read-only", file, error);
  const message = `Another server of Ramp & Rack works on the data folder ${folder}. Use that one, stop it first, or set RAMP_AND_RACK_DATA to another folder.`;
  return new StoreError("locked", message, { cause: error });
}
