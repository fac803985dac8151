import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { largestRecordBytes } from "../format/schedule-schema.js";
import { type Problem, pathText } from "../reading/problems.js";
import { encodingProblem, utf8Text } from "../reading/utf8.js";
import { recordAtHand, recordDigest, recordsNamed, recordText, takeRecord } from "./at-hand.js";
import { keptRecords } from "./kept-records.js";

/** Beside a study's file: its records, each a CSV file that is called by its digest. */
export const recordFolder = "records";

export const recordFile = (digest: string): string => `${digest}.csv`;

/** Puts the records that a document names at hand, from the folder beside it; a digest makes no way out of it. */
export function takeRecordsFrom(folder: string, document: unknown): Problem[] {
  return keptRecords(document).flatMap(({ place, digest }) => {
    const path = pathText([...place, "kept"], document);
    const file = join(folder, recordFolder, recordFile(digest));
    const bytes = statSync(file, { throwIfNoEntry: false });
    if (!bytes?.isFile() || recordAtHand(digest) !== undefined) return [];
    if (bytes.size > 2 * largestRecordBytes) return [altered(path, digest)];
    const text = utf8Text(readFileSync(file));
    if (text === undefined) return [encodingProblem(path)];
    return takeRecord(text) === digest ? [] : [altered(path, digest)];
  });
}

/** The records that a text names, of those in the folder beside it that are as they were kept. */
export function recordsBeside(folder: string, text: string): string[] {
  return recordsNamed(text).flatMap((digest) => {
    const file = join(folder, recordFolder, recordFile(digest));
    const found = statSync(file, { throwIfNoEntry: false });
    if (!found?.isFile() || found.size > 2 * largestRecordBytes) return [];
    const record = utf8Text(readFileSync(file)) ?? "";
    return recordDigest(record) === digest ? [recordText(record)] : [];
  });
}

const altered = (path: string, digest: string): Problem => ({
  path,
  found: `${recordFolder}/${recordFile(digest)}, which was altered`,
  allowed: "the file as it was kept: its name is the SHA-256 of its text",
  remedy: "Restore it from a copy, or read the exported file again with the record command.",
});

/** Keeps a record beside a study's file. @returns where */
export function keepBeside(folder: string, text: string): { readonly digest: string; readonly path: string } {
  const digest = takeRecord(text);
  const path = join(folder, recordFolder, recordFile(digest));
  mkdirSync(join(folder, recordFolder), { recursive: true });
  writeFileSync(`${path}.part`, recordText(text));
  renameSync(`${path}.part`, path);
  return { digest, path };
}
