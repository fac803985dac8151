import { describe, expect, it } from "vitest";
import { accessStore, type KeptAccessKey } from "../../src/store/access.js";
import { backUp } from "../../src/store/backup.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { openAsItIs } from "../../src/store/open-database.js";
import { restore } from "../../src/store/restore.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const key = (name: string, changes: Partial<KeptAccessKey> = {}): KeptAccessKey => ({
  ...{ name, role: "edit", addedAt: "2026-01-02T00:00:00Z", locator: `at-${name}` },
  ...{ salt: Buffer.from("salt"), hash: Buffer.from("hash"), cost: 2, blockSize: 1, parallelization: 1 },
  ...changes,
});

describe("access keys", () => {
  it("are found by name, large or small letters, and by their first part", () => {
    const store = accessStore(storeConnection(":memory:"));
    expect(store.hasKeys()).toBe(false);
    expect(store.add(key("Ada"))).toBe(true);
    expect(store.hasKeys()).toBe(true);
    expect(store.keyOf("aDA")).toEqual(key("Ada"));
    expect(store.keyAt("at-Ada")).toEqual(key("Ada"));
    expect(store.keyOf("Ben")).toBeUndefined();
  });

  it("are one for each name, and the first stays", () => {
    const store = accessStore(storeConnection(":memory:"));
    store.add(key("Ada"));
    expect(store.add(key("ada", { locator: "other", role: "read" }))).toBe(false);
    expect(store.list()).toEqual([{ name: "Ada", role: "edit", addedAt: "2026-01-02T00:00:00Z" }]);
  });

  it("take their owner's sessions along when they are removed", () => {
    const store = accessStore(storeConnection(":memory:"));
    store.add(key("Ada"));
    const digest = Buffer.from("digest");
    store.begin({ digest, name: "Ada", startedAt: 5, usedAt: 5 }, { startedAt: 0, usedAt: 0 });
    expect(store.session(digest)).toMatchObject({ name: "Ada", role: "edit", usedAt: 5 });
    expect(store.remove("Ada")).toBe(true);
    expect(store.session(digest)).toBeUndefined();
    expect(store.remove("Ada")).toBe(false);
  });
});

describe("a backup", () => {
  it("takes no access keys along, and restoring it lets the same people in as before", async () => {
    const place = folder();
    const connection = storeConnection(place);
    const store = accessStore(connection);
    studyStore(connection).create(written("one"));
    store.add(key("Gone", { hash: Buffer.from("a hash that nobody should carry away") }));
    const backup = `${place}/backup.sqlite`;
    await backUp(databaseFile(place), backup);
    const copy = openAsItIs(backup);
    expect(copy.prepare("SELECT count(*) FROM access_key").pluck().get()).toBe(0);
    expect(copy.serialize().includes("a hash that nobody should carry away")).toBe(false);
    copy.close();
    store.remove("Gone");
    store.add(key("Ada"));
    await restore(backup, databaseFile(place), new Date());
    expect(store.list().map(({ name }) => name)).toEqual(["Ada"]);
    expect(studyStore(connection).latest("lake")?.text).toBe("one");
    connection.close();
  });
});
