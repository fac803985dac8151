import { spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { dirname } from "node:path";
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
    "The database's native part is not there yet. It is fetched, or compiled, which takes a minute.",
  );
  const folder = dirname(createRequire(import.meta.url).resolve("better-sqlite3/package.json"));
  spawnSync("npm", ["run", "install"], {
    ...{ cwd: folder, stdio: "ignore" },
    env: { ...process.env, JOBS: "max" },
  });
  isThere = isLoadable();
  if (!isThere)
    throw new PlainError(
      `The database's native part could be neither fetched nor compiled. Run "npm run install" in ${folder} to see what it lacks: a network, or a C++ compiler.`,
    );
}

function isLoadable(): boolean {
  try {
    new Database(":memory:").close();
    return true;
  } catch {
    return false;
  }
}
