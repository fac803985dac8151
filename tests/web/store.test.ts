import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { openStudyStore } from "../../src/store/studies.js";

const folders: string[] = [];
const folder = () => {
  const made = mkdtempSync(join(tmpdir(), "ramp-and-rack-"));
  folders.push(made);
  return made;
};

afterEach(() => {
  for (const each of folders.splice(0)) rmSync(each, { recursive: true });
});

const study = (text: string) => ({
  id: "lake",
  name: "Lake",
  savedAt: "2026-01-01T00:00:00Z",
  fileName: "lake.yaml",
  text,
});

describe("kept studies", () => {
  it("are there after closing and opening again, text unchanged", () => {
    const place = folder();
    const first = openStudyStore(place);
    first.keep(study("one\r\n湖"));
    first.close();
    const second = openStudyStore(place);
    expect(second.latest("lake")?.text).toBe("one\r\n湖");
    second.close();
  });

  it("count revisions, and the list shows the latest of each", () => {
    const store = openStudyStore(folder());
    expect(store.keep(study("one")).revision).toBe(1);
    expect(store.keep(study("two")).revision).toBe(2);
    store.keep({ ...study("other"), id: "pond" });
    expect(store.list().map(({ id, revision }) => `${id} ${revision}`)).toEqual(["lake 2", "pond 1"]);
    store.close();
  });
});
