import type { Database } from "better-sqlite3";

interface VersionName {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
}

/** Names that were given to revisions, which themselves never change. */
export function versionNames(database: Database, id: string): ReadonlyMap<number, string> {
  const rows = database
    .prepare<[string], Omit<VersionName, "id">>("SELECT revision, name FROM version_name WHERE id = ?")
    .all(id);
  return new Map(rows.map(({ revision, name }) => [revision, name]));
}

/** An empty name takes the name away. */
export function nameVersion(database: Database, { id, revision, name }: VersionName): void {
  if (name === "") {
    database
      .prepare<[string, number]>("DELETE FROM version_name WHERE id = ? AND revision = ?")
      .run(id, revision);
    return;
  }
  database
    .prepare<[VersionName]>(
      `INSERT INTO version_name (id, revision, name) VALUES (@id, @revision, @name)
       ON CONFLICT (id, revision) DO UPDATE SET name = excluded.name`,
    )
    .run({ id, revision, name });
}
