import type { Database } from "better-sqlite3";
import type { StoreConnection } from "./connection.js";
import { revisionDigest } from "./digests.js";
import { ConflictError, DeletedStudyError, UnknownStudyError } from "./errors.js";
import { keepRecord, keptRecord } from "./kept-records.js";
import type { KeptRevision, KeptStudy, RevisionCard, StudyCard, StudyState, Writing } from "./records.js";
import { cardOf, cardsIn, damagedError, latestAsKept, revisionAsKept, revisionCards } from "./study-rows.js";
import { nameVersion, versionNames } from "./version-names.js";

/** Texts of studies, complete or not: every save is a revision, and no revision changes. All throw StoreError. */
export interface StudyStore {
  /** Studies in one state, the last saved first. */
  readonly list: (state: StudyState) => StudyCard[];
  /** A study in any state without its text, which may be damaged. */
  readonly card: (id: string) => StudyCard | undefined;
  /** A study in any state, by its latest revision. @throws DamagedRevisionError */
  readonly latest: (id: string) => KeptStudy | undefined;
  /** @throws DamagedRevisionError */
  readonly revision: (id: string, revision: number) => KeptRevision | undefined;
  /** The newest first. */
  readonly revisions: (id: string) => RevisionCard[];
  /** Names given to revisions of a study. */
  readonly versionNames: (id: string) => ReadonlyMap<number, string>;
  /** Names a revision, or takes its name away where it is empty. */
  readonly nameVersion: (id: string, revision: number, name: string) => void;
  /** Keeps a new study under `id`, or under `id` with a number where there is one of that id, whatever its state. */
  readonly create: (study: NewStudy) => KeptStudy;
  /**
   * Keeps the next revision; a text equal to the latest makes none.
   * @throws ConflictError where the latest is not `expected`; UnknownStudyError; DeletedStudyError
   */
  readonly save: (change: NextRevision) => KeptStudy;
  /** Also of a damaged study. @param when ISO 8601 @throws UnknownStudyError */
  readonly setState: (id: string, state: StudyState, when: string) => KeptStudy;
  /** Keeps a record under its digest. */
  readonly keepRecord: (digest: string, text: string) => void;
  readonly keptRecord: (digest: string) => string | undefined;
  /** Removes a deleted study with all its revisions for good. @throws UnknownStudyError where none is deleted */
  readonly remove: (id: string) => void;
}

export interface NewStudy extends Writing {
  readonly id: string;
  readonly text: string;
}

interface NextRevision extends NewStudy {
  /** The revision that the writer had before him. */
  readonly expected: number;
}

export function studyStore({ read, write }: StoreConnection): StudyStore {
  return {
    list: (state) => read((database) => cardsIn(database, state)),
    card: (id) => read((database) => cardOf(database, id)),
    latest: (id) =>
      read((database) => {
        const study = latestAsKept(database, id);
        if (study?.isDamaged) throw damagedError(database, study);
        return study;
      }),
    revision: (id, revision) =>
      read((database) => {
        const found = revisionAsKept(database, id, revision);
        if (found?.isDamaged) throw damagedError(database, found);
        return found;
      }),
    revisions: (id) => read((database) => revisionCards(database, id)),
    versionNames: (id) => read((database) => versionNames(database, id)),
    nameVersion: (id, revision, name) => write((database) => nameVersion(database, { id, revision, name })),
    create: (study) => write((database) => create(database, study)),
    save: (change) => write((database) => save(database, change)),
    setState: (id, state, when) =>
      write((database) => {
        database
          .prepare<[StudyState, string, string, StudyState]>(
            "UPDATE study SET state = ?, state_changed_at = ? WHERE id = ? AND state <> ?",
          )
          .run(state, when, id, state);
        return mustExist(database, id);
      }),
    keepRecord: (digest, text) => write((database) => keepRecord(database, digest, text)),
    keptRecord: (digest) => read((database) => keptRecord(database, digest)),
    remove: (id) => write((database) => remove(database, id)),
  };
}

function mustExist(database: Database, id: string): KeptStudy {
  const study = latestAsKept(database, id);
  if (!study) throw new UnknownStudyError(`No study has the id "${id}".`);
  return study;
}

function create(database: Database, study: NewStudy): KeptStudy {
  const id = freeId(database, study.id);
  database
    .prepare<[string, string, string]>(
      "INSERT INTO study (id, state, created_at, state_changed_at) VALUES (?, 'active', ?, ?)",
    )
    .run(id, study.savedAt, study.savedAt);
  insertRevision(database, { ...study, id, revision: 1 });
  return mustExist(database, id);
}

function freeId(database: Database, wanted: string): string {
  const taken = database.prepare<[string]>("SELECT 1 FROM study WHERE id = ?");
  for (let number = 1; ; number++) {
    const id = number === 1 ? wanted : `${wanted}-${number}`;
    if (!taken.get(id)) return id;
  }
}

function save(database: Database, { expected, ...change }: NextRevision): KeptStudy {
  const before = mustExist(database, change.id);
  if (before.state === "deleted") throw new DeletedStudyError(before);
  // The second of two equal savings may be the repetition of one whose answer was lost.
  if (before.text === change.text && !before.isDamaged) return before;
  if (before.revision !== expected) throw new ConflictError(expected, before);
  insertRevision(database, { ...change, revision: expected + 1 });
  return mustExist(database, change.id);
}

type NewRevision = Omit<KeptRevision, "isDamaged">;

function insertRevision(database: Database, revision: NewRevision): void {
  database
    .prepare<[NewRevision]>(
      `INSERT INTO revision (id, revision, name, saved_at, author, note, origin, file_name, text, digest)
       VALUES (@id, @revision, @name, @savedAt, @author, @note, @origin, @fileName, @text, ${revisionDigest("@")})`,
    )
    .run(revision);
}

function remove(database: Database, id: string): void {
  const { changes } = database
    .prepare<[string]>("DELETE FROM study WHERE id = ? AND state = 'deleted'")
    .run(id);
  if (changes === 0) throw new UnknownStudyError(`No deleted study has the id "${id}".`);
}
