import type { Database } from "better-sqlite3";

/** Records that studies name by their digest. None is altered or removed: revisions and issued reports rest on them. */
export function keepRecord(database: Database, digest: string, text: string): void {
  database
    .prepare<[string, string]>("INSERT OR REPLACE INTO kept_record (digest, text) VALUES (?, ?)")
    .run(digest, text);
}

/** The text kept under a digest, as it is: whoever takes it compares the two. */
export const keptRecord = (database: Database, digest: string): string | undefined =>
  database.prepare<[string], string>("SELECT text FROM kept_record WHERE digest = ?").pluck().get(digest);
