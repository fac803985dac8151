/** Letters and marks of scripts that run from right to left. */
const letter = String.raw`[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]`;
const word = String.raw`${letter}[${letter.slice(1, -1)}\p{M}]*`;
/** Words of a name, and a number that ends it. */
const run = String.raw`${word}(?:[ \d.,’\-]+${word})*(?: \d+(?=[”<]|$))?`;

/** What is not running text: tags, and elements that may hold no other elements or are pictures. */
const notText = String.raw`<(script|style|title|svg|textarea|option)\b[\s\S]*?</\1>|<[^>]*>`;

const anyLetter = new RegExp(letter, "u");
const textOrNot = new RegExp(`${notText}|${run}`, "gu");

/**
 * HTML with names that run from right to left set apart: else a number or a mark that follows such a name would be
 * drawn on its other side (Unicode Standard Annex 9; HTML's element bdi).
 */
export function isolateRightToLeft(html: string): string {
  if (!anyLetter.test(html)) return html;
  return html.replace(textOrNot, (found) => (found.startsWith("<") ? found : `<bdi>${found}</bdi>`));
}
