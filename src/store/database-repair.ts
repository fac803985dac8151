import type { Database } from "better-sqlite3";
import { damagedRows } from "./digests.js";

/**
 * Makes again what a flipped bit took from a database whose rows are sound: an index, by which an older revision would be
 * found as the latest, and the line of a study, without which its revisions are in no list. Where a row is damaged all is
 * left as it is: it is told where it is read, and what leads to it may be sound.
 */
export function mend(database: Database): void {
  if (isWhole(database)) return;
  const { revisions, issues } = damagedRows(database);
  if (revisions.length + issues.length > 0) return;
  database
    .transaction(() => {
      database.exec("REINDEX");
      database.exec(
        `INSERT INTO study (id, state, created_at, state_changed_at)
           SELECT id, 'active', min(saved_at), max(saved_at) FROM revision
           WHERE id NOT IN (SELECT id FROM study) GROUP BY id`,
      );
    })
    .immediate();
}

function isWhole(database: Database): boolean {
  const astray: unknown = database.pragma("foreign_key_check(revision)");
  return (
    database.pragma("integrity_check", { simple: true }) === "ok" &&
    Array.isArray(astray) &&
    astray.length === 0
  );
}
