import { strToU8, unzipSync, zipSync } from "fflate";
import { InputError } from "../reading/problems.js";
import { utf8Text } from "../reading/utf8.js";
import { recordDigest, recordsFor } from "./at-hand.js";
import { recordFile, recordFolder } from "./record-folder.js";

/** A study's file with the records beside it, as they lie in a folder. */
export function studyZip({ id, text }: { readonly id: string; readonly text: string }): Uint8Array {
  const records = recordsFor([text]).map((record) => [
    `${recordFolder}/${recordFile(recordDigest(record))}`,
    strToU8(record),
  ]);
  // One day for all: the same study gives the same bytes.
  return zipSync(Object.fromEntries([[`${id}.yaml`, strToU8(text)], ...records]), { mtime: "2000-01-01" });
}

/** What a zip of a study may unpack to, and how many files. */
const mostBytes = 32 * 1024 * 1024;
const mostFiles = 40;

const studyName = /^[^/\\]+\.(ya?ml|json)$/i;
const recordName = /^records\/[0-9a-f]{64}\.csv$/;

export const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

interface ZippedStudy {
  readonly fileName: string;
  readonly study: Uint8Array;
  readonly records: readonly string[];
}

/**
 * The study and the records in a zip; names lead to no file, and others are passed over.
 * @throws InputError where it holds no study, or more than is read
 */
export function unzippedStudy(bytes: Uint8Array, name: string): ZippedStudy {
  const files = unpacked(bytes, name);
  const studies = Object.entries(files).filter(([path]) => studyName.test(path));
  const [study, other] = studies;
  if (!study || other) {
    throw refused(
      name,
      study ? `${studies.length} studies` : "no study",
      "one study (.yaml or .json) with its folder of records",
    );
  }
  const records = Object.entries(files).flatMap(([path, content]) => {
    const text = recordName.test(path) ? utf8Text(content) : undefined;
    return text === undefined ? [] : [text];
  });
  return { fileName: study[0], study: study[1], records };
}

function unpacked(bytes: Uint8Array, name: string): Record<string, Uint8Array> {
  let [size, count] = [0, 0];
  try {
    return unzipSync(bytes, {
      filter: ({ name: path, originalSize }) => {
        if (!studyName.test(path) && !recordName.test(path)) return false;
        size += originalSize;
        count += 1;
        if (size > mostBytes || count > mostFiles) throw new RangeError("too much");
        return true;
      },
    });
  } catch (error) {
    const isLarge = error instanceof RangeError;
    throw refused(
      name,
      isLarge ? "more than is read" : "a zip that cannot be unpacked",
      "a zip of one study with at most 32 MB of records",
    );
  }
}

const refused = (name: string, found: string, allowed: string) =>
  new InputError(name, [
    {
      path: "the file",
      found,
      allowed,
      remedy: "Download the study with its records again, or give the study’s file alone.",
    },
  ]);
