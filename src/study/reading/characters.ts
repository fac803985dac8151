/**
 * Characters forbidden in XML, even as escapes (https://www.w3.org/TR/xml/#charsets, production 2,
 * Char): a workbook, picture or PDF metadata with one of them is ill-formed and refused as a whole. Allowed are tab,
 * line feed, carriage return, U+0020 to U+D7FF, U+E000 to U+FFFD and U+10000 to U+10FFFF; characters from U+D800 to
 * U+DFFF in a text are unpaired surrogates.
 */
const notInXml = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;
const allNotInXml = new RegExp(notInXml, "gu");

/**
 * Those, the control characters that XML discourages, and the embeddings, overrides and isolates of direction (U+202A to
 * U+202E and U+2066 to U+2069; https://www.unicode.org/reports/tr9/#Directional_Formatting_Characters), which turn the text after
 * them round: nobody sees or types them.
 */
const unseen =
  /[^\t\n\r\u0020-\u007e\u0085\u00a0-\u2029\u202f-\u2065\u206a-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/u;

const allUnseen = new RegExp(unseen, "gu");

/** "U+0007" */
export const codeOf = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}`;

/** What is allowed in place of what `unseenIn` finds. */
export const allowedCharacters =
  "characters that can be printed: no control characters, marks that turn the direction of text, halves of characters (surrogates), U+FFFE or U+FFFF";

/** The first unprintable character and its position, counted from 1: "U+0007 at character 5". */
export function unseenIn(text: string): string | undefined {
  const found = unseen.exec(text);
  if (!found) return undefined;
  const before = text.slice(0, found.index).split("\n");
  const place = `${codeOf(found[0])} at character ${Array.from(before.at(-1) ?? "").length + 1}`;
  return before.length > 1 || text.includes("\n") ? `${place} of line ${before.length}` : place;
}

/** Whether a text is fit for print, such as a name or a note. */
export const isPrintable = (text: string): boolean => !unseen.test(text);

/** A text with U+FFFD, the replacement character, in place of each that is not fit for print. */
export const forPrint = (text: string): string => text.replace(allUnseen, "\ufffd");

/** A text for XML, with U+FFFD, the replacement character, in place of each forbidden character. */
export const forXml = (text: string): string =>
  notInXml.test(text) ? text.replace(allNotInXml, "\ufffd") : text;
