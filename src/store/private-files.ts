import { chmodSync, closeSync, lstatSync, mkdirSync, openSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { companions } from "./database-companions.js";

/** What other users of the machine may do with a file, in the bits of its mode. */
const othersBits = 0o077;
const othersEnter = 0o001;
/** Marks a folder in which everybody may write. */
const stickyBit = 0o1000;

/** Makes a folder, and those above it that are missing, for this user alone. @throws what the system reports */
export function makePrivateFolder(folder: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
}

/** Makes an empty file for this user alone where there is none, before anything is written to it. */
export function makePrivateFile(file: string): void {
  try {
    closeSync(openSync(file, "wx", 0o600));
  } catch {
    // It is there, or cannot be made: whoever opens it tells that.
  }
}

/** Takes a database, and what SQLite keeps beside it, out of other users' reach. */
function tightenDatabase(file: string): void {
  for (const ending of ["", ...companions]) tighten(file + ending);
}

/**
 * Takes the folder of a database out of other users' reach, with every database in it: this one, those that restores set
 * aside, backups and the lock. Links are left alone, since they may lead anywhere.
 */
export function tightenFolderOf(database: string): void {
  const folder = dirname(database);
  if (!isShared(folder)) tighten(folder);
  for (const name of namesIn(folder)) {
    const file = join(folder, name);
    if (ofDatabase.test(name) && lstatSync(file, { throwIfNoEntry: false })?.isFile()) tighten(file);
  }
  tightenDatabase(database);
}

/**
 * Whether others need to enter a folder: one with the sticky bit, such as /tmp, and for root, whose word goes everywhere,
 * one that holds folders open to all, such as /var/lib.
 */
function isShared(folder: string): boolean {
  const mode = statSync(folder, { throwIfNoEntry: false })?.mode ?? 0;
  if ((mode & stickyBit) !== 0) return true;
  if (process.getuid?.() !== 0) return false;
  return namesIn(folder).some((name) => {
    const found = lstatSync(join(folder, name), { throwIfNoEntry: false });
    return found?.isDirectory() && (found.mode & othersEnter) !== 0;
  });
}

const ofDatabase = /(?:\.sqlite|\.lock|\.part)(?:-wal|-shm|-journal)?$/;

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

/** Never fails: some systems and disks have no such modes, and another user's file is not ours to change. */
function tighten(path: string): void {
  try {
    const { mode } = statSync(path);
    if ((mode & othersBits) !== 0) chmodSync(path, mode & 0o700);
  } catch {
    // It stays as it is.
  }
}
