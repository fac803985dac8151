import { randomUUID } from "node:crypto";
import { renameSync, writeFileSync } from "node:fs";

/** Writes beside the target and renames, so that a reader never meets half a file. */
export function writeWhole(path: string, content: string | Uint8Array): void {
  const partial = `${path}.${randomUUID()}.part`;
  writeFileSync(partial, content);
  renameSync(partial, path);
}
