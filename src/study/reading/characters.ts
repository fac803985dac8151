/**
 * Characters that no document of XML may hold, in no way of writing them (https://www.w3.org/TR/xml/#charsets, production 2,
 * Char): a workbook, a picture or the metadata of a PDF with one of them is ill-formed and refused as a whole. These are
 * all but tab, line feed, carriage return, U+0020 to U+D7FF, U+E000 to U+FFFD and U+10000 to U+10FFFF; what is left over
 * of U+D800 to U+DFFF are surrogates without their other half.
 */
const notInXml = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;
const allNotInXml = new RegExp(notInXml, "gu");

/** The same, and control characters that XML merely advises against: nobody sees them, and nobody typed them. */
const unseen = /[^\t\n\r\u0020-\u007e\u0085\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

/** "U+0007" */
export const codeOf = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;

/** What is allowed where `unseenIn` finds something. */
export const allowedCharacters =
  "characters that can be printed: no control characters, halves of characters (surrogates), U+FFFE or U+FFFF";

/** The first character of a text that cannot be printed and its place, both counted from 1: "U+0007 at character 5". */
export function unseenIn(text: string): string | undefined {
  const found = unseen.exec(text);
  if (!found) return undefined;
  const before = text.slice(0, found.index).split("\n");
  const place = `${codeOf(found[0])} at character ${Array.from(before.at(-1) ?? "").length + 1}`;
  return before.length > 1 || text.includes("\n") ? `${place} of line ${before.length}` : place;
}

/** Whether a text may be kept as a name, a note or any other text that is printed. */
export const isPrintable = (text: string): boolean => !unseen.test(text);

/** A text for a document of XML: U+FFFD, the sign for what cannot be shown, in place of what such a document may not hold. */
export const forXml = (text: string): string =>
  notInXml.test(text) ? text.replace(allNotInXml, "\ufffd") : text;
