import { InputError } from "./problems.js";

import { largestStudyBytes, tooLarge } from "./read.js";

/**
 * The text of a study file; written again as UTF-8 it has the same bytes.
 * @throws InputError where they are too many, or no UTF-8, and so would be lost
 */
export function decodeStudy(bytes: Uint8Array, name: string): string {
  if (bytes.byteLength > largestStudyBytes) throw tooLarge(name, bytes.byteLength);
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    const remedy = "Save the file as UTF-8 in your editor, then give it again.";
    throw new InputError(name, [
      { path: "the file", found: "bytes in another encoding", allowed: "text in UTF-8", remedy },
    ]);
  }
}
