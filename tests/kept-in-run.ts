import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deserialize, serialize } from "node:v8";

/** Where the processes of one run of tests find what any of them has made. */
const placeOfRun = "RAMP_AND_RACK_KEPT_IN_RUN";

/** Makes the folder before any test, and takes it away after all. */
export function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "kept-in-run-"));
  process.env[placeOfRun] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}

/**
 * What takes long to make, made once in a run: by the process that asks first, whatever file it runs.
 * @param name of what is made, and of nothing else that is
 */
export function keptInRun<Made>(name: string, make: () => Made): Made {
  const folder = process.env[placeOfRun];
  if (folder === undefined) return make();
  const file = join(folder, name);
  if (existsSync(file)) return deserialize(readFileSync(file));
  const made = make();
  // Whole or not at all, for who asks meanwhile.
  writeFileSync(`${file}.${process.pid}`, serialize(made));
  renameSync(`${file}.${process.pid}`, file);
  return made;
}
