import { execSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { PlainError } from "../plain-error.js";

let isThere = false;

/**
 * Fetches SQLite's native part, or compiles it where none is ready for this system. Installing leaves it out: most commands
 * keep nothing, and to compile it takes three quarters of an installation.
 * @throws PlainError
 */
export function needNativePart(): void {
  isThere ||= isLoadable();
  if (isThere) return;
  console.error(
    "The database's native part is missing. It is now fetched or compiled, which takes about a minute.",
  );
  const folder = dirname(createRequire(import.meta.url).resolve("better-sqlite3/package.json"));
  try {
    makeNativePart(folder);
  } catch {
    // Whether it is there now, by this process or another, is seen by loading it.
  }
  isThere = isLoadable();
  if (!isThere)
    throw new PlainError(
      `The database's native part could be neither fetched nor compiled. What may be missing: a network, a C++ compiler, or your right to write in ${dirname(folder)}. Run "npm run build" as the user who installed the program; "npm run install" in ${folder} shows what fails.`,
    );
}

/** In a copy beside, and put in its place whole: another process may do the same, or have it loaded, and each may be ended. */
function makeNativePart(folder: string): void {
  const copy = mkdtempSync(`${folder}-`);
  try {
    cpSync(folder, copy, { recursive: true });
    execSync("npm run install", { cwd: copy, stdio: "ignore", env: { ...process.env, JOBS: "max" } });
    const made = join("build", "Release", "better_sqlite3.node");
    mkdirSync(dirname(join(folder, made)), { recursive: true });
    renameSync(join(copy, made), join(folder, made));
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

function isLoadable(): boolean {
  try {
    new Database(":memory:").close();
    return true;
  } catch {
    return false;
  }
}
