import { readdirSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { backUp } from "../../src/store/backup.js";
import { databaseFile, type StoreConnection, storeConnection } from "../../src/store/connection.js";
import { restore } from "../../src/store/restore.js";
import { type StudyStore, studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const when = new Date("2026-03-04T05:06:07Z");

/** A store that stays open, as that of a running server does. */
function openStore(): { place: string; file: string; connection: StoreConnection; store: StudyStore } {
  const place = folder();
  const connection = storeConnection(place);
  const store = studyStore(connection);
  store.create(written("one"));
  store.save({ ...written("two"), expected: 1 });
  return { place, file: databaseFile(place), connection, store };
}

describe("a backup", () => {
  it("of a store in use is one file that holds all that was committed", async () => {
    const { file, connection } = openStore();
    const place = folder();
    expect(await backUp(file, join(place, "copy.sqlite"))).toEqual({
      ...{ studies: 1, revisions: 2 },
      damaged: { revisions: [], issues: [] },
    });
    expect(readdirSync(place)).toEqual(["copy.sqlite"]);
    const copy = new Database(join(place, "copy.sqlite"), { readonly: true });
    expect(copy.prepare("SELECT text FROM revision ORDER BY revision").pluck().all()).toEqual(["one", "two"]);
    copy.close();
    connection.close();
  });

  it("of a damaged store is refused, and leaves no file", async () => {
    const { file, connection } = openStore();
    connection.close();
    truncateSync(file, 5000);
    const place = folder();
    await expect(backUp(file, join(place, "copy.sqlite"))).rejects.toMatchObject({ fault: "damaged" });
    expect(readdirSync(place)).toEqual([]);
  });
});

describe("restoring", () => {
  it("replaces the content under a store in use, and keeps what was there", async () => {
    const { place, file, connection, store } = openStore();
    const backup = join(folder(), "copy.sqlite");
    await backUp(file, backup);
    store.save({ ...written("three"), expected: 2 });
    store.create(written("other", { id: "pond" }));
    const restored = await restore(backup, file, when);
    expect(store.list("active").map(({ id, revision }) => `${id} ${revision}`)).toEqual(["lake 2"]);
    expect(restored).toMatchObject({ studies: 1, revisions: 2 });
    expect(restored.before).toBe(join(place, "studies-before-restore-2026-03-04T05-06-07.sqlite"));
    await restore(restored.before ?? "", file, new Date(when.getTime() + 1000));
    expect(store.latest("lake")?.text).toBe("three");
    expect(store.latest("pond")?.text).toBe("other");
    connection.close();
  });

  it("sets a damaged database aside, and a store in use goes on with the backup", async () => {
    const { place, file, connection, store } = openStore();
    const backup = join(folder(), "copy.sqlite");
    await backUp(file, backup);
    connection.close();
    truncateSync(file, 5000);
    expect(() => store.list("active")).toThrow(/damaged/);
    const { before } = await restore(backup, file, when);
    expect(before).toBe(join(place, "studies-damaged-2026-03-04T05-06-07.sqlite"));
    expect(store.latest("lake")?.text).toBe("two");
    connection.close();
  });

  it("takes a backup of the first version", async () => {
    const { file, connection, store } = openStore();
    const backup = join(folder(), "old.sqlite");
    const old = new Database(backup);
    old.exec(`CREATE TABLE revision (id TEXT NOT NULL, revision INTEGER NOT NULL, name TEXT NOT NULL,
        saved_at TEXT NOT NULL, file_name TEXT NOT NULL, text TEXT NOT NULL, PRIMARY KEY (id, revision)) STRICT;
      INSERT INTO revision VALUES ('bay', 1, 'Bay', '2025-01-01T00:00:00Z', 'bay.yaml', 'old');`);
    old.close();
    await restore(backup, file, when);
    expect(store.list("active")).toMatchObject([{ id: "bay", author: "" }]);
    connection.close();
  });

  it("starts a store where there was none", async () => {
    const { file, connection } = openStore();
    const backup = join(folder(), "copy.sqlite");
    await backUp(file, backup);
    connection.close();
    const elsewhere = join(folder(), "data");
    expect(await restore(backup, databaseFile(elsewhere), when)).toEqual({
      studies: 1,
      revisions: 2,
      damaged: { revisions: [], issues: [] },
      before: undefined,
    });
  });

  it.each<[string, (backup: string) => void, RegExp]>([
    ["is no database", (backup) => writeFileSync(backup, "lake: 1\n".repeat(100)), /damaged or no backup/],
    ["is empty", (backup) => writeFileSync(backup, ""), /damaged or no backup/],
    [
      "is another program's",
      (backup) => new Database(backup).exec("CREATE TABLE t (x)").close(),
      /no database of/,
    ],
    [
      "is of a newer version",
      (backup) => new Database(backup).exec("CREATE TABLE revision (x); PRAGMA user_version = 999").close(),
      /newer version/,
    ],
    ["is not there", () => undefined, /cannot be written|cannot be opened/],
  ])("from a file that %s changes nothing", async (_what, make, message) => {
    const { place, file, connection, store } = openStore();
    const backup = join(folder(), "copy.sqlite");
    make(backup);
    await expect(restore(backup, file, when)).rejects.toThrow(message);
    expect(store.latest("lake")?.text).toBe("two");
    expect(readdirSync(place).filter((name) => name.includes("-before-"))).toEqual([]);
    connection.close();
  });
});
