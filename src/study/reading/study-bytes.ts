import { largestStudyBytes, tooLarge } from "./read.js";
import { mustBeUtf8 } from "./utf8.js";

/**
 * The text of a study file; written again as UTF-8 it has the same bytes.
 * @throws InputError where they are too many, or no UTF-8, and so would be lost
 */
export function decodeStudy(bytes: Uint8Array, name: string): string {
  if (bytes.byteLength > largestStudyBytes) throw tooLarge(name, bytes.byteLength);
  return mustBeUtf8(bytes, name);
}
