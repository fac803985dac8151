import { isUtf8 } from "node:buffer";
import { InputError } from "../reading/problems.js";
import { largestExportBytes } from "./export-table.js";

/** The text of an exported file. @throws InputError where it is too large, or not in UTF-8 */
export function exportText(bytes: Uint8Array, name: string): string {
  const refuse = (path: string, found: string, allowed: string, remedy: string) =>
    new InputError(name, [{ path, found, allowed, remedy }]);
  if (bytes.byteLength > largestExportBytes) {
    const [found, most] = [bytes.byteLength, largestExportBytes].map(
      (size) => `${Math.ceil(size / 2 ** 20)} MB`,
    );
    throw refuse("the file", `${found}`, `at most ${most}`, "Export fewer years, or daily means.");
  }
  const line = firstBadLine(bytes);
  if (line === undefined) return new TextDecoder().decode(bytes);
  throw refuse(
    `line ${line}`,
    "bytes in another encoding",
    "text in UTF-8",
    "Save or export the file as UTF-8, then give it again.",
  );
}

/** The first line that is no UTF-8; looked for in long stretches of lines first, since a file may have millions. */
function firstBadLine(bytes: Uint8Array): number | undefined {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const near = firstBadStretch(text, 0, longStretch);
  if (near === undefined) return undefined;
  const start = firstBadStretch(text, near, 0) ?? near;
  let line = 1;
  for (let at = text.indexOf("\n"); at >= 0 && at < start; at = text.indexOf("\n", at + 1)) line += 1;
  return line;
}

/** Bytes. */
const longStretch = 64 * 1024;

/** Where the first stretch of whole lines starts that is no text. */
function firstBadStretch(text: Buffer, from: number, stretch: number): number | undefined {
  for (let start = from; start < text.length; ) {
    const feed = text.indexOf("\n", start + stretch);
    const end = feed < 0 ? text.length : feed + 1;
    if (!isText(text.subarray(start, end))) return start;
    start = end;
  }
  return undefined;
}

/** A mark of order of UTF-16 and its zeros are no text of an export. */
const isText = (bytes: Uint8Array): boolean => isUtf8(bytes) && !bytes.includes(0);
