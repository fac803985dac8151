import { InputError, type Problem } from "./problems.js";

const notUtf8 = {
  found: "bytes in another encoding",
  allowed: "text in UTF-8",
  remedy: "Save the file as UTF-8 in your editor, then give it again.",
};

/** The text of a file, which encodes to the same bytes. @returns undefined if they are not UTF-8 */
export function utf8Text(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

export const encodingProblem = (path: string): Problem => ({ path, ...notUtf8 });

/** The text of a file. @throws InputError if a character would be lost */
export function mustBeUtf8(bytes: Uint8Array, name: string): string {
  const text = utf8Text(bytes);
  if (text === undefined) throw new InputError(name, [encodingProblem("the file")]);
  return text;
}
