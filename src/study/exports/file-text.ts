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

/** The first line that is no UTF-8. */
function firstBadLine(bytes: Uint8Array): number | undefined {
  if (isUtf8(bytes)) return undefined;
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let line = 1;
  for (let start = 0; start < text.length; line += 1) {
    const feed = text.indexOf("\n", start);
    const end = feed < 0 ? text.length : feed + 1;
    if (!isUtf8(text.subarray(start, end))) return line;
    start = end;
  }
  return 1;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    // A mark of order of UTF-16 and its zeros are no text of an export.
    return !new TextDecoder("utf-8", { fatal: true }).decode(bytes).includes("\0");
  } catch {
    return false;
  }
}
