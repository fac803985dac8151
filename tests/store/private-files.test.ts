import { chmodSync, existsSync, mkdirSync, readdirSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { newAccessKey } from "../../src/app/keys.js";
import { backupCommand, restoreCommand } from "../../src/cli/keeping-commands.js";
import { accessStore } from "../../src/store/access.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { restore } from "../../src/store/restore.js";
import { lockForServing } from "../../src/store/serving-lock.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);
const modesIn = (place: string) =>
  Object.fromEntries(readdirSync(place).map((name) => [name, modeOf(join(place, name))]));
const open = (place: string) => {
  for (const name of readdirSync(place)) chmodSync(join(place, name), 0o644);
  chmodSync(place, 0o755);
};

afterEach(() => vi.unstubAllEnvs());

describe("what is kept", () => {
  it("is for its own user alone from the start: folder, database, log, keys and lock", async () => {
    const place = join(folder(), "new", "data");
    const lock = lockForServing(place);
    const connection = storeConnection(place);
    studyStore(connection).create(written("one"));
    accessStore(connection).add((await newAccessKey("Ada", "edit", new Date(0))).kept);
    expect(modeOf(place)).toBe("700");
    expect(modesIn(place)).toEqual({
      "serving.lock": "600",
      "serving.lock-journal": "600",
      "studies.sqlite": "600",
      "studies.sqlite-shm": "600",
      "studies.sqlite-wal": "600",
    });
    connection.close();
    lock.release();
  });

  it("by an earlier version is shut when it is opened, with what was set aside and a log left behind", () => {
    const place = folder();
    const kept = storeConnection(place);
    studyStore(kept).create(written("one"));
    for (const name of ["studies-before-restore-2026.sqlite", "monday.sqlite", "serving.lock"]) {
      writeFileSync(join(place, name), "kept");
    }
    open(place);
    const connection = storeConnection(place);
    studyStore(connection).list("active");
    expect(modeOf(place)).toBe("700");
    expect(new Set(Object.values(modesIn(place)))).toEqual(new Set(["600"]));
    connection.close();
    kept.close();
  });

  it("keeps other files of its folder, what links lead to, and folders that all share as they are", () => {
    const place = folder();
    const elsewhere = join(folder(), "elsewhere.sqlite");
    writeFileSync(elsewhere, "another's");
    symlinkSync(elsewhere, join(place, "link.sqlite"));
    writeFileSync(join(place, "notes.txt"), "mine");
    open(place);
    chmodSync(elsewhere, 0o644);
    chmodSync(place, 0o1777);
    const connection = storeConnection(place);
    studyStore(connection).list("active");
    expect([modeOf(elsewhere), modeOf(join(place, "notes.txt")), modeOf(place)]).toEqual([
      "644",
      "644",
      "777",
    ]);
    expect(modeOf(databaseFile(place))).toBe("600");
    connection.close();
  });
});

it("a folder that holds open ones of others is shut by its own user, not by root, who may have meant /var/lib", () => {
  const place = folder();
  const theirs = join(place, "theirs");
  mkdirSync(theirs);
  open(place);
  chmodSync(theirs, 0o755);
  const connection = storeConnection(place);
  studyStore(connection).list("active");
  expect(modeOf(place)).toBe(process.getuid?.() === 0 ? "755" : "700");
  expect([modeOf(theirs), modeOf(databaseFile(place))]).toEqual(["755", "600"]);
  connection.close();
});

describe("a backup", () => {
  it("is for its own user alone, wherever it is written, and the store it is taken of is shut", async () => {
    const place = join(folder(), "data");
    vi.stubEnv("RAMP_AND_RACK_DATA", place);
    const connection = storeConnection(place);
    studyStore(connection).create(written("one"));
    connection.close();
    open(place);
    const target = join(folder(), "monday.sqlite");
    await backupCommand(target, () => undefined);
    expect([modeOf(target), modeOf(place), modeOf(databaseFile(place))]).toEqual(["600", "700", "600"]);
  });

  it("restored makes a folder, and a copy of what was there, for their own user alone", async () => {
    const from = join(folder(), "data");
    vi.stubEnv("RAMP_AND_RACK_DATA", from);
    const connection = storeConnection(from);
    studyStore(connection).create(written("one"));
    connection.close();
    const backup = join(folder(), "monday.sqlite");
    await backupCommand(backup, () => undefined);
    const place = join(folder(), "elsewhere");
    vi.stubEnv("RAMP_AND_RACK_DATA", place);
    await restoreCommand(backup, () => undefined);
    open(place);
    await restoreCommand(backup, () => undefined);
    expect(modeOf(place)).toBe("700");
    expect(Object.keys(modesIn(place))).toHaveLength(2);
    expect(new Set(Object.values(modesIn(place)))).toEqual(new Set(["600"]));
  });

  it("put in place of a damaged database leaves that to its own user alone", async () => {
    const place = folder();
    const connection = storeConnection(place);
    studyStore(connection).create(written("one"));
    connection.close();
    const backup = join(folder(), "copy.sqlite");
    vi.stubEnv("RAMP_AND_RACK_DATA", place);
    await backupCommand(backup, () => undefined);
    writeFileSync(databaseFile(place), "no database ".repeat(1000));
    open(place);
    const { before = "" } = await restore(backup, databaseFile(place), new Date(0));
    expect(existsSync(before)).toBe(true);
    expect(modeOf(before)).toBe("600");
  });
});
