import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { storeConnection } from "#product/store/connection.js";
import { StoreError } from "#product/store/errors.js";
import { studyStore } from "#product/store/studies.js";

/** A fault brought about, and what was seen of it. */
export interface Trial {
  readonly what: string;
  readonly found: string;
  readonly isGood: boolean;
}

const mount = (...words: readonly string[]) => spawnSync("mount", words, { stdio: "ignore" }).status === 0;

/** A disk of one megabyte that fills up, and then one that may not be written any more; both need the right to mount. */
export function diskFaults(): Trial[] {
  const place = mkdtempSync(join(tmpdir(), "ramp-and-rack-disk-"));
  try {
    if (!mount("-t", "tmpfs", "-o", "size=1m", "tmpfs", place)) {
      return [{ what: "full disk", found: "not tried: mounting needs root", isGood: true }];
    }
    try {
      return [fullDisk(place), readOnlyDisk(place)];
    } finally {
      spawnSync("umount", [place]);
    }
  } finally {
    rmSync(place, { recursive: true });
  }
}

const writing = {
  name: "Lake",
  savedAt: "2026-01-01T00:00:00Z",
  author: "",
  note: "",
  origin: "upload",
  fileName: "lake.yaml",
} as const;

function fullDisk(place: string): Trial {
  const what = "full disk";
  const connection = storeConnection(place);
  const store = studyStore(connection);
  try {
    let { revision } = store.create({ ...writing, id: "lake", text: "start" });
    try {
      for (;;) {
        const text = `${revision}${"x".repeat(50_000)}`;
        revision = store.save({ ...writing, id: "lake", text, expected: revision }).revision;
      }
    } catch (error) {
      const isTold = error instanceof StoreError && error.fault === "full";
      const kept = store.latest("lake")?.revision;
      const told = error instanceof Error ? error.message : String(error);
      return {
        what,
        found: `revision ${kept} of ${revision} kept; ${told}`,
        isGood: isTold && kept === revision,
      };
    }
  } finally {
    connection.close();
  }
}

function readOnlyDisk(place: string): Trial {
  const what = "disk that may not be written";
  if (!mount("-o", "remount,ro", place)) return { what, found: "not tried: the disk is busy", isGood: false };
  const connection = storeConnection(place);
  try {
    const found = studyStore(connection).list("active");
    return { what, found: `${found.length} studies listed without a word`, isGood: false };
  } catch (error) {
    const isTold = error instanceof StoreError && error.fault === "read-only";
    return { what, found: error instanceof Error ? error.message : String(error), isGood: isTold };
  } finally {
    connection.close();
  }
}
