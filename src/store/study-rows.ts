import type { Database } from "better-sqlite3";
import { revisionDigest } from "./digests.js";
import { DamagedRevisionError } from "./errors.js";
import type { KeptRevision, KeptStudy, RevisionCard, StudyCard, StudyState } from "./records.js";

/** Digests are compared at each reading: what was sound when the server started may not be any more. */
const digest = revisionDigest("revision.");
const card = `revision.id, revision, name, saved_at AS savedAt, author, note, origin, file_name AS fileName,
  digest <> ${digest} AS isDamaged`;
const studyCard = `${card}, state, created_at AS createdAt, state_changed_at AS stateChangedAt`;
const latestOfEach = `FROM study JOIN revision ON revision.id = study.id
  AND revision = (SELECT max(revision) FROM revision AS each WHERE each.id = study.id)`;

/** SQLite has no truth values of its own. */
type Row<Card extends RevisionCard> = Omit<Card, "isDamaged"> & { readonly isDamaged: number };

const withDamageFlag = <Each extends { readonly isDamaged: number }>(row: Each) => ({
  ...row,
  isDamaged: row.isDamaged !== 0,
});

/** Studies in one state, the last saved first. */
export const cardsIn = (database: Database, state: StudyState): StudyCard[] =>
  database
    .prepare<[StudyState], Row<StudyCard>>(
      `SELECT ${studyCard} ${latestOfEach} WHERE state = ? ORDER BY saved_at DESC, study.id`,
    )
    .all(state)
    .map(withDamageFlag);

export function cardOf(database: Database, id: string): StudyCard | undefined {
  const row = database
    .prepare<[string], Row<StudyCard>>(`SELECT ${studyCard} ${latestOfEach} WHERE study.id = ?`)
    .get(id);
  return row && withDamageFlag(row);
}

/** With its text as it is, sound or not. */
export function latestAsKept(database: Database, id: string): KeptStudy | undefined {
  const row = database
    .prepare<[string], Row<KeptStudy>>(`SELECT ${studyCard}, text ${latestOfEach} WHERE study.id = ?`)
    .get(id);
  return row && withDamageFlag(row);
}

/** With its text as it is, sound or not. */
export function revisionAsKept(database: Database, id: string, revision: number): KeptRevision | undefined {
  const row = database
    .prepare<[string, number], Row<KeptRevision>>(
      `SELECT ${card}, text FROM revision WHERE id = ? AND revision = ?`,
    )
    .get(id, revision);
  return row && withDamageFlag(row);
}

/** The newest first. */
export const revisionCards = (database: Database, id: string): RevisionCard[] =>
  database
    .prepare<[string], Row<RevisionCard>>(`SELECT ${card} FROM revision WHERE id = ? ORDER BY revision DESC`)
    .all(id)
    .map(withDamageFlag);

export function damagedError(
  database: Database,
  { id, revision, ...rest }: RevisionCard,
): DamagedRevisionError {
  const sound = database
    .prepare<[string, number], number>(
      `SELECT revision FROM revision WHERE id = ? AND revision < ? AND digest = ${digest} ORDER BY revision DESC LIMIT 1`,
    )
    .pluck()
    .get(id, revision);
  const latest = database
    .prepare<[string], number>("SELECT max(revision) FROM revision WHERE id = ?")
    .pluck()
    .get(id);
  return new DamagedRevisionError({ ...rest, id, revision }, sound, latest === revision);
}
