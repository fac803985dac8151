import Database from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { knowDigests } from "../../src/store/digests.js";
import { issueStore } from "../../src/store/issues.js";
import { currentVersion } from "../../src/store/migrations.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

/** Databases as each earlier version wrote them, with two revisions of a lake and one of a pond. */
const earlier: Record<string, string> = {
  "1": `CREATE TABLE IF NOT EXISTS revision (
      id TEXT NOT NULL, revision INTEGER NOT NULL, name TEXT NOT NULL, saved_at TEXT NOT NULL,
      file_name TEXT NOT NULL, text TEXT NOT NULL, PRIMARY KEY (id, revision)
    ) STRICT;
    INSERT INTO revision VALUES
      ('lake', 1, 'Lake', '2025-01-01T00:00:00Z', 'lake.yaml', 'one'),
      ('lake', 2, 'Great lake', '2025-02-01T00:00:00Z', 'lake-2.yaml', 'two' || char(13) || char(10)),
      ('pond', 1, 'Pond', '2025-01-15T00:00:00Z', 'pond.yaml', 'three');`,
  "2": `CREATE TABLE study (
      id TEXT NOT NULL PRIMARY KEY, state TEXT NOT NULL CHECK (state IN ('active', 'archived', 'deleted')),
      created_at TEXT NOT NULL, state_changed_at TEXT NOT NULL
    ) STRICT;
    CREATE TABLE revision (
      id TEXT NOT NULL REFERENCES study (id) ON DELETE CASCADE, revision INTEGER NOT NULL CHECK (revision >= 1),
      name TEXT NOT NULL, saved_at TEXT NOT NULL, author TEXT NOT NULL, note TEXT NOT NULL, origin TEXT NOT NULL,
      file_name TEXT NOT NULL, text TEXT NOT NULL, PRIMARY KEY (id, revision)
    ) STRICT;
    INSERT INTO study VALUES
      ('lake', 'active', '2025-01-01T00:00:00Z', '2025-01-01T00:00:00Z'),
      ('pond', 'active', '2025-01-15T00:00:00Z', '2025-01-15T00:00:00Z');
    INSERT INTO revision VALUES
      ('lake', 1, 'Lake', '2025-01-01T00:00:00Z', '', '', 'upload', 'lake.yaml', 'one'),
      ('lake', 2, 'Great lake', '2025-02-01T00:00:00Z', '', '', 'upload', 'lake-2.yaml', 'two' || char(13) || char(10)),
      ('pond', 1, 'Pond', '2025-01-15T00:00:00Z', '', '', 'upload', 'pond.yaml', 'three');
    PRAGMA user_version = 2;`,
};

/** The third kept issued reports as well. */
earlier["3"] = `${earlier["2"]}
  CREATE TABLE issue (
    study_id TEXT NOT NULL, number INTEGER NOT NULL CHECK (number >= 1), issued_at TEXT NOT NULL, author TEXT NOT NULL,
    note TEXT NOT NULL, revision INTEGER NOT NULL CHECK (revision >= 1), study_name TEXT NOT NULL,
    file_name TEXT NOT NULL, study_text TEXT NOT NULL, assumptions TEXT NOT NULL, engine_version TEXT NOT NULL,
    seed INTEGER, figures TEXT NOT NULL, digest TEXT NOT NULL, pdf BLOB NOT NULL, PRIMARY KEY (study_id, number)
  ) STRICT;
  CREATE TRIGGER issue_comes_next BEFORE INSERT ON issue
    WHEN NEW.number <> (SELECT coalesce(max(number), 0) + 1 FROM issue WHERE study_id = NEW.study_id)
    BEGIN SELECT RAISE(ABORT, 'the number of an issued report is the next of its study'); END;
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;
  CREATE TRIGGER issue_is_not_removed BEFORE DELETE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be removed, only superseded'); END;
  INSERT INTO issue VALUES
    ('lake', 1, '2025-02-02T00:00:00Z', 'Ada', '', 2, 'Great lake', 'lake-2.yaml', 'two', '{}', '0.1.0', NULL, '{}', 'd', x'25');
  PRAGMA user_version = 3;`;

/** The fourth kept access keys. */
earlier["4"] = `${earlier["3"]}
  CREATE TABLE access_key (
    name TEXT NOT NULL PRIMARY KEY COLLATE NOCASE, locator TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('read', 'edit')), salt BLOB NOT NULL, hash BLOB NOT NULL,
    cost INTEGER NOT NULL, block_size INTEGER NOT NULL, parallelization INTEGER NOT NULL, added_at TEXT NOT NULL
  ) STRICT;
  CREATE TABLE access_session (
    digest BLOB NOT NULL PRIMARY KEY,
    name TEXT NOT NULL COLLATE NOCASE REFERENCES access_key (name) ON DELETE CASCADE,
    started_at INTEGER NOT NULL, used_at INTEGER NOT NULL
  ) STRICT;
  PRAGMA user_version = 4;`;

/** The fifth kept digests of its rows. */
earlier["5"] = `${earlier["4"]}
  ALTER TABLE revision ADD COLUMN digest TEXT NOT NULL DEFAULT '';
  ALTER TABLE issue ADD COLUMN record_digest TEXT NOT NULL DEFAULT '';
  ALTER TABLE issue ADD COLUMN pdf_digest TEXT NOT NULL DEFAULT '';
  DROP TRIGGER issue_is_not_altered;
  UPDATE revision SET digest = kept_digest(id, revision, name, saved_at, author, note, origin, file_name, CAST(text AS BLOB));
  UPDATE issue SET pdf_digest = kept_digest(pdf),
    record_digest = kept_digest(study_id, number, issued_at, author, note, revision, study_name, file_name,
      engine_version, seed, digest, CAST(study_text AS BLOB), CAST(assumptions AS BLOB), CAST(figures AS BLOB));
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;
  PRAGMA user_version = 5;`;

/** The sixth kept the board's part of an issued report. */
earlier["6"] = `${earlier["5"]}
  ALTER TABLE issue ADD COLUMN board_pdf BLOB;
  DROP TRIGGER issue_is_not_altered;
  UPDATE issue SET pdf_digest = kept_digest(pdf, board_pdf);
  CREATE TRIGGER issue_is_not_altered BEFORE UPDATE ON issue
    BEGIN SELECT RAISE(ABORT, 'an issued report cannot be altered, only superseded'); END;
  PRAGMA user_version = 6;`;

/** The seventh kept names of revisions. */
earlier["7"] = `${earlier["6"]}
  CREATE TABLE version_name (
    id TEXT NOT NULL,
    revision INTEGER NOT NULL,
    name TEXT NOT NULL CHECK (name <> ''),
    PRIMARY KEY (id, revision),
    FOREIGN KEY (id, revision) REFERENCES revision (id, revision) ON DELETE CASCADE
  ) STRICT;
  PRAGMA user_version = 7;`;

function databaseMadeBy(sql: string): string {
  const place = folder();
  const database = new Database(databaseFile(place));
  knowDigests(database);
  database.exec(sql);
  database.close();
  return place;
}

describe("a database of an earlier version", () => {
  it("has its content here for each of them", () => {
    expect(Object.keys(earlier)).toHaveLength(currentVersion - 1);
  });

  it.each(Object.keys(earlier))("%s is brought up to date without loss", (version) => {
    const connection = storeConnection(databaseMadeBy(earlier[version] ?? ""));
    const store = studyStore(connection);
    expect(store.list("active")).toMatchObject([
      { id: "lake", revision: 2, name: "Great lake", createdAt: "2025-01-01T00:00:00Z" },
      { id: "pond", revision: 1, savedAt: "2025-01-15T00:00:00Z" },
    ]);
    expect(store.revision("lake", 1)).toMatchObject({ name: "Lake", text: "one", fileName: "lake.yaml" });
    expect(store.latest("lake")?.text).toBe("two\r\n");
    expect(store.save({ ...written("four"), expected: 2 }).revision).toBe(3);
    expect(connection.read((database) => database.pragma("user_version", { simple: true }))).toBe(
      currentVersion,
    );
    connection.close();
  });

  it.each(["3", "4", "5", "6", "7"])("%s keeps its issued reports, with their guard", (version) => {
    const connection = storeConnection(databaseMadeBy(earlier[version] ?? ""));
    const issues = issueStore(connection);
    expect(issues.find("lake", 1)).toMatchObject({ digest: "d", revision: 2, boardPdf: null });
    expect(issues.list("lake")).toMatchObject([{ hasBoardPart: false }]);
    expect(() => connection.write((database) => database.exec("UPDATE issue SET note = 'x'"))).toThrow(
      /altered/,
    );
    connection.close();
  });

  it("5 tells that a report was damaged before", () => {
    const sql = (earlier["5"] ?? "").replace(
      "pdf_digest = kept_digest(pdf)",
      "pdf_digest = kept_digest(x'26')",
    );
    const connection = storeConnection(databaseMadeBy(sql));
    expect(issueStore(connection).damaged("lake")).toEqual([1]);
    connection.close();
  });

  it("stays as it was if a step cannot be done", () => {
    const sql = `${earlier["1"]} INSERT INTO revision VALUES ('bay', 0, 'Bay', '2025-01-01T00:00:00Z', 'f', 't');`;
    const place = databaseMadeBy(sql);
    expect(() => studyStore(storeConnection(place)).list("active")).toThrow(/CHECK constraint/);
    const database = new Database(databaseFile(place));
    expect(database.prepare("SELECT count(*) FROM revision").pluck().get()).toBe(4);
    expect(database.pragma("user_version", { simple: true })).toBe(0);
    database.close();
  });
});

describe("a database that is not this program's to change", () => {
  it.each([
    [
      "a newer version",
      `PRAGMA user_version = ${currentVersion + 1}; CREATE TABLE revision (other);`,
      "newer",
    ],
    ["another program", "CREATE TABLE address (street);", "foreign"],
  ])("written by %s, is refused and left alone", (_who, sql, fault) => {
    const place = databaseMadeBy(sql);
    expect(() => studyStore(storeConnection(place)).list("active")).toThrow(
      expect.objectContaining({ fault }),
    );
    const database = new Database(databaseFile(place));
    expect(database.prepare("SELECT count(*) FROM sqlite_schema").pluck().get()).toBe(1);
    database.close();
  });
});
