import { appendices, appendixLetter } from "../../study/format/report-schema.js";

const letters = new Map(appendices.map((id) => [appendixLetter(id), id]));

const notText = String.raw`<(script|style|title|svg|nav|h2|h3|caption|th)\b[\s\S]*?</\1>|<[^>]*>`;
const reference = new RegExp(String.raw`${notText}|\bappendix ([A-Z])\b`, "gu");

/** HTML for the press, in which each mention of a printed appendix has a place for its page; see browser/pages.ts. */
export function withPageReferences(html: string, printed: readonly { readonly id: string }[]): string {
  const ids = new Set(printed.map(({ id }) => id));
  return html.replace(reference, (found, _element, letter: string | undefined) => {
    const id = letters.get(letter ?? "");
    return id !== undefined && ids.has(id)
      ? `${found}, page <span data-page-of="appendix-${id}"></span>`
      : found;
  });
}
