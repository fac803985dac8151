import { describe, expect, it } from "vitest";
import { backUp } from "../../src/store/backup.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { issueStore, type KeptIssue } from "../../src/store/issues.js";
import { restore } from "../../src/store/restore.js";
import { studyStore } from "../../src/store/studies.js";
import { folder, written } from "./places.js";

const issue = (number: number, changes: Partial<KeptIssue> = {}): KeptIssue => ({
  studyId: "lake",
  number,
  issuedAt: "2026-01-02T00:00:00Z",
  author: "Ada",
  note: "",
  revision: 1,
  studyName: "Lake",
  engineVersion: "0.1.0",
  seed: null,
  digest: `digest ${number}`,
  fileName: "lake.yaml",
  studyText: "text",
  assumptions: "{}",
  figures: "{}",
  pdf: Buffer.from("%PDF-1.7"),
  boardPdf: Buffer.from("%PDF-1.7, the board"),
  ...changes,
});

describe("issued reports", () => {
  it("are kept to the byte, the newest first, and found by number and digest", () => {
    const issues = issueStore(storeConnection(":memory:"));
    expect(issues.keep(issue(1))).toBe(true);
    expect(issues.keep(issue(2))).toBe(true);
    expect(issues.list("lake").map(({ number }) => number)).toEqual([2, 1]);
    expect(issues.find("lake", 1)).toEqual(issue(1));
    expect(issues.withDigest("digest 2")).toEqual(issue(2));
  });

  it("bear the next number of their study and no other", () => {
    const issues = issueStore(storeConnection(":memory:"));
    expect(issues.keep(issue(2))).toBe(false);
    expect(issues.keep(issue(1))).toBe(true);
    expect(issues.keep(issue(1, { digest: "another" }))).toBe(false);
    expect(issues.keep(issue(1, { studyId: "pond", digest: "of the pond" }))).toBe(true);
    expect(issues.list("lake")).toHaveLength(1);
  });

  it.each([
    "UPDATE issue SET note = 'mended'",
    "DELETE FROM issue",
    "REPLACE INTO issue SELECT * FROM issue",
    "UPDATE OR REPLACE issue SET digest = 'other'",
  ])("are neither altered nor removed: %s", (sql) => {
    const connection = storeConnection(":memory:");
    const issues = issueStore(connection);
    issues.keep(issue(1));
    expect(() => connection.write((database) => database.exec(sql))).toThrow(/issued report/);
    expect(issues.find("lake", 1)).toEqual(issue(1));
  });

  it("stay when their study is removed", () => {
    const connection = storeConnection(":memory:");
    const store = studyStore(connection);
    const issues = issueStore(connection);
    store.create(written("text"));
    issues.keep(issue(1));
    store.setState("lake", "deleted", "2026-02-01T00:00:00Z");
    store.remove("lake");
    expect(issues.list("lake")).toHaveLength(1);
  });

  it("come back with a backup, which does not loosen their guard", async () => {
    const file = databaseFile(folder());
    const connection = storeConnection(file.replace(/\/[^/]*$/, ""));
    studyStore(connection).create(written("text"));
    issueStore(connection).keep(issue(1));
    const backup = `${file}.backup`;
    await backUp(file, backup);
    issueStore(connection).keep(issue(2));
    await restore(backup, file, new Date("2026-03-01T00:00:00Z"));
    expect(issueStore(connection).list("lake")).toHaveLength(1);
    expect(() => connection.write((database) => database.exec("DELETE FROM issue"))).toThrow(/removed/);
    connection.close();
  });
});
