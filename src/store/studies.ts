import { mkdirSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";

/** A kept revision of a study: its file as it was given. */
export interface KeptStudy {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  readonly savedAt: string;
  readonly fileName: string;
  readonly text: string;
}

export interface StudyStore {
  /** Latest revision of each study, newest first. */
  readonly list: () => KeptStudy[];
  readonly latest: (id: string) => KeptStudy | undefined;
  /** Keeps a text as the next revision of `id`; earlier revisions stay. */
  readonly keep: (study: Omit<KeptStudy, "revision">) => KeptStudy;
  readonly close: () => void;
}

const schema = `
  CREATE TABLE IF NOT EXISTS revision (
    id TEXT NOT NULL,
    revision INTEGER NOT NULL,
    name TEXT NOT NULL,
    saved_at TEXT NOT NULL,
    file_name TEXT NOT NULL,
    text TEXT NOT NULL,
    PRIMARY KEY (id, revision)
  ) STRICT;
`;

const columns = "id, revision, name, saved_at AS savedAt, file_name AS fileName, text";

/** Opens the store in a folder, made if need be; ":memory:" keeps nothing after closing. */
export function openStudyStore(folder: string): StudyStore {
  const inMemory = folder === ":memory:";
  if (!inMemory) mkdirSync(folder, { recursive: true });
  const database = new Database(inMemory ? folder : join(folder, "studies.sqlite"));
  database.pragma("journal_mode = WAL");
  database.pragma("synchronous = FULL");
  database.exec(schema);
  const list = database.prepare<[], KeptStudy>(
    `SELECT ${columns} FROM revision AS r
     WHERE revision = (SELECT max(revision) FROM revision WHERE id = r.id) ORDER BY saved_at DESC, id`,
  );
  const latest = database.prepare<[string], KeptStudy>(
    `SELECT ${columns} FROM revision WHERE id = ? ORDER BY revision DESC LIMIT 1`,
  );
  const insert = database.prepare<[KeptStudy]>(
    "INSERT INTO revision (id, revision, name, saved_at, file_name, text) VALUES (@id, @revision, @name, @savedAt, @fileName, @text)",
  );
  const keep = database.transaction((study: Omit<KeptStudy, "revision">): KeptStudy => {
    const kept = { ...study, revision: (latest.get(study.id)?.revision ?? 0) + 1 };
    insert.run(kept);
    return kept;
  });
  return {
    list: () => list.all(),
    latest: (id) => latest.get(id),
    keep: (study) => keep.immediate(study),
    close: () => database.close(),
  };
}
