import { spawnSync } from "node:child_process";
import { randomBytes } from "node:crypto";
import {
  chmodSync,
  chownSync,
  copyFileSync,
  readFileSync,
  renameSync,
  statSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import type { StoreFault } from "../../src/store/errors.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const fault = (kind: StoreFault, message: RegExp) =>
  expect.objectContaining({ fault: kind, message: expect.stringMatching(message) });

/** A closed database with some revisions, its write-ahead log folded in. */
function keptStudies(): string {
  const place = folder();
  const connection = storeConnection(place);
  const store = studyStore(connection);
  store.create(written("x".repeat(50_000)));
  for (let expected = 1; expected < 5; expected++) {
    store.save({ ...written(`${expected}`.repeat(50_000)), expected });
  }
  connection.close();
  return place;
}

const listIn = (place: string) => studyStore(storeConnection(place)).list("active");

describe("a damaged database", () => {
  it.each<[string, (file: string) => void]>([
    ["cut off in the middle", (file) => truncateSync(file, Math.floor(statSync(file).size / 2))],
    ["emptied", (file) => truncateSync(file, 0)],
    ["no database at all", (file) => writeFileSync(file, randomBytes(20_000))],
    [
      "garbled within",
      (file) => {
        const bytes = readFileSync(file);
        bytes.fill(0xff, 4096, 4096 * 4);
        writeFileSync(file, bytes);
      },
    ],
  ])("that is %s is told with the way out, and left as it is", (_what, harm) => {
    const place = keptStudies();
    const file = databaseFile(place);
    harm(file);
    const before = readFileSync(file);
    expect(() => listIn(place)).toThrow(fault("damaged", /ramp-and-rack restore FILE/));
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it("is opened anew once a sound one took its place", () => {
    const place = keptStudies();
    const file = databaseFile(place);
    copyFileSync(file, join(place, "sound"));
    truncateSync(file, 5000);
    const connection = storeConnection(place);
    const store = studyStore(connection);
    expect(() => store.list("active")).toThrow(fault("damaged", /damaged/));
    renameSync(join(place, "sound"), file);
    expect(store.list("active")).toHaveLength(1);
    connection.close();
  });
});

describe("a database that cannot be written now", () => {
  it("because another program holds it, says so, and works once it is let go", () => {
    const place = keptStudies();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    connection.read((database) => database.pragma("busy_timeout = 20"));
    const other = new Database(databaseFile(place));
    other.exec("BEGIN EXCLUSIVE");
    const change = { ...written("new"), expected: 5 };
    expect(() => store.save(change)).toThrow(fault("locked", /locked by another program/));
    expect(store.latest("lake")?.revision).toBe(5);
    other.exec("ROLLBACK");
    other.close();
    expect(store.save(change).revision).toBe(6);
    connection.close();
  });

  it("because the disk is full, keeps all earlier revisions and nothing of the new one", () => {
    const place = keptStudies();
    const connection = storeConnection(place);
    const store = studyStore(connection);
    const pages = connection.read((database) => database.pragma("page_count", { simple: true }));
    connection.read((database) => database.pragma(`max_page_count = ${pages}`));
    const change = { ...written("y".repeat(100_000)), expected: 5 };
    expect(() => store.save(change)).toThrow(fault("full", /all earlier revisions are/));
    expect(() => store.create(written("z".repeat(100_000)))).toThrow(fault("full", /Free some space/));
    expect(store.list("active")).toMatchObject([{ id: "lake", revision: 5 }]);
    connection.read((database) => database.pragma("max_page_count = 100000"));
    expect(store.save(change).revision).toBe(6);
    connection.close();
  });

  it("because its user may only read it, says what to allow", () => {
    const place = keptStudies();
    const nobody = 65534;
    // The program may stand where only root can read: it is loaded first, then the rights are given up.
    const asNobody = process.getuid?.() === 0 ? `process.setgid(${nobody}); process.setuid(${nobody});` : "";
    if (process.getuid?.() === 0) chownSync(databaseFile(place), 0, 0);
    chmodSync(databaseFile(place), 0o444);
    chmodSync(place, 0o555);
    const connection = join(projectRoot, "dist", "store", "connection.js");
    const script = `import { storeConnection } from ${JSON.stringify(connection)};
      storeConnection(":memory:").read(() => 0);
      ${asNobody}
      try { storeConnection(${JSON.stringify(place)}).read(() => 0); } catch (error) { console.log(error.fault, error.message); }`;
    const { stdout } = spawnSync(process.execPath, ["--input-type=module", "-e", script], {
      encoding: "utf8",
    });
    chmodSync(place, 0o755);
    expect(stdout).toMatch(/^read-only .*right to write the file and its folder/);
  });

  it("because its folder cannot be made, says so", () => {
    const file = join(folder(), "file");
    writeFileSync(file, "");
    expect(() => listIn(join(file, "data"))).toThrow(fault("read-only", /RAMP_AND_RACK_DATA/));
  });
});
