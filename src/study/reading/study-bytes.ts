import { largestStudyBytes, tooLarge } from "./read.js";
import { mustBeUtf8 } from "./utf8.js";

/**
 * The text of a study file, which encodes to the same bytes as UTF-8.
 * @throws InputError if there are too many, or they are not UTF-8 and would be lost
 */
export function decodeStudy(bytes: Uint8Array, name: string): string {
  if (bytes.byteLength > largestStudyBytes) throw tooLarge(name, bytes.byteLength);
  return mustBeUtf8(bytes, name);
}
