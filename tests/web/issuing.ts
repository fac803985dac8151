import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { signingKeyFile, signingKeyIn } from "../../src/issue/signing-key.js";
import { type StoreConnection, storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";

/** What the application issues reports with, on a day in January; the key is gone after the tests of the file. */
export function issuingIn(connection: StoreConnection = storeConnection(":memory:")) {
  const folder = mkdtempSync(join(tmpdir(), "issuing-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const now = () => new Date("2026-01-02T03:04:05Z");
  return {
    issues: issueStore(connection),
    now,
    key: signingKeyIn(folder, now),
    keyFile: signingKeyFile(folder),
  };
}
