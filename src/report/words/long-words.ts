/** Letters without a place to break, beyond which a word is given some. */
const longest = 30;
const between = 6;

const notText = String.raw`<(script|style|title|svg|textarea|option)\b[\s\S]*?</\1>|<[^>]*>`;
const character = String.raw`(?:&[#\w]+;|[^\s<&\u200b])`;
const longWord = new RegExp(`${notText}|${character}{${longest + 1},}`, "gu");
const piece = new RegExp(`${character}{${between}}(?=${character})`, "gu");

/** After these a word breaks rather than elsewhere. */
const afterSign = /(?<=[./_-])/;

const withBreaks = (word: string): string =>
  word
    .split(afterSign)
    .map((part) => (part.length > longest ? part.replace(piece, "$&<wbr>") : part))
    .join("<wbr>");

/** HTML in which a word of any length wraps: a table would else be as wide as its longest word. */
export const breakLongWords = (html: string): string =>
  html.replace(longWord, (found) => (found.startsWith("<") ? found : withBreaks(found)));
