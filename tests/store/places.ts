import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach } from "vitest";
import type { NewStudy } from "../../src/store/studies.js";

const folders: string[] = [];

afterEach(() => {
  for (const each of folders.splice(0)) rmSync(each, { recursive: true });
});

/** A folder of its own, removed after the test. */
export function folder(): string {
  const made = mkdtempSync(join(tmpdir(), "ramp-and-rack-"));
  folders.push(made);
  return made;
}

export const written = (text: string, changes: Partial<NewStudy> = {}): NewStudy => ({
  id: "lake",
  name: "Lake",
  savedAt: "2026-01-01T00:00:00Z",
  author: "Ada",
  note: "",
  origin: "upload",
  fileName: "lake.yaml",
  text,
  ...changes,
});
