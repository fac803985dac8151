import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { largestRecordBytes, recordFileName } from "../format/schedule-schema.js";
import { type Problem, pathText } from "./problems.js";
import { encodingProblem, utf8Text } from "./utf8.js";

/** A record that names a file. */
interface FileRecord {
  readonly path: string;
  readonly file: string;
  readonly record: object;
}

/**
 * Puts the text of each CSV file named by a record under `csv`, in the document itself. Only plain names of files in
 * the study's own folder are followed; other values of `file` are left for the schema to refuse.
 */
export function readRecordFiles(document: unknown, folder: string): Problem[] {
  return fileRecords(document).flatMap(({ path, file, record }) => {
    if ("csv" in record) {
      const allowed = "csv or file, not both";
      return [{ path, found: `"${file}" beside csv`, allowed, remedy: "Take out one of the two." }];
    }
    if (!recordFileName.test(file)) return [];
    const bytes = sizeOf(join(folder, file));
    const problem = sizeProblem(path, file, bytes);
    if (problem) return [problem];
    const csv = utf8Text(readFileSync(join(folder, file)));
    if (csv === undefined) return [encodingProblem(path)];
    Object.assign(record, { csv });
    return [];
  });
}

/** Problems of a study without a folder, whose records cannot name files. */
export function refuseRecordFiles(document: unknown): Problem[] {
  return fileRecords(document).map(({ path, file }) => ({
    path,
    found: `"${file.slice(0, 100)}"`,
    allowed: "a record's file only in a study that is read from disk",
    remedy: "Paste the text of that file under csv, in place of file.",
  }));
}

function fileRecords(document: unknown): FileRecord[] {
  const lake = own(document, "lake");
  const others = own(lake, "otherSchedules");
  const records = [
    { path: ["lake", "record"], record: own(lake, "record") },
    ...(Array.isArray(others) ? others : []).map((holder: unknown, index) => ({
      path: ["lake", "otherSchedules", index, "record"],
      record: own(holder, "record"),
    })),
    { path: ["boats", "traffic"], record: own(own(document, "boats"), "traffic") },
  ];
  return records.flatMap(({ path, record }) => {
    const file = own(record, "file");
    if (typeof record !== "object" || record === null || typeof file !== "string") return [];
    return [{ path: pathText([...path, "file"], document), file, record }];
  });
}

function own(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? Reflect.get(value, key)
    : undefined;
}

function sizeOf(path: string): number | undefined {
  try {
    const found = statSync(path);
    return found.isFile() ? found.size : undefined;
  } catch {
    return undefined;
  }
}

function sizeProblem(path: string, file: string, bytes: number | undefined): Problem | undefined {
  if (bytes === undefined) {
    const allowed = "a CSV file in the folder of the study file";
    return { path, found: `no file "${file}"`, allowed, remedy: "Put it there or correct its name." };
  }
  if (bytes <= largestRecordBytes) return undefined;
  const megabytes = (size: number) => `${(size / 1024 / 1024).toFixed(1)} MB`;
  return {
    path,
    found: `"${file}" of ${megabytes(bytes)}`,
    allowed: `at most ${megabytes(largestRecordBytes)}`,
    remedy: "Check that this is the right file; leave out the earliest years of a longer record.",
  };
}
