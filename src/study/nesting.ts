import { type Document, Lexer, visit } from "yaml";

/** Groups within groups: a study needs a dozen. */
export const deepestGroups = 64;

/** With fewer groups than this, nested as they may be, a text is read in no time. */
const fewGroups = 1000;

/**
 * The line from which on groups are nested deeper than any study's. The parser itself notices as well, but for a
 * long text only after many seconds.
 */
export function lineNestedTooDeep(text: string): number | undefined {
  const mayOpen = text.match(/[[{]|[-?][ \t]/g)?.length ?? 0;
  if (mayOpen <= fewGroups) return undefined;
  let line = 1;
  let flow = 0;
  let onLine = 0;
  for (const token of new Lexer().lex(text)) {
    if (token === "[" || token === "{") flow += 1;
    else if (token === "]" || token === "}") flow -= 1;
    else if (token === "-" || token === "?") onLine += 1;
    else if (token === "\n" || token === "\r\n") onLine = 0;
    if (flow > deepestGroups || onLine > deepestGroups) return line;
    line += token.split("\n").length - 1;
  }
  return undefined;
}

/** Whether a document that was read is deeper than any study: what works through it later would run out of room. */
export function isNestedTooDeep(document: Document): boolean {
  let found = false;
  visit(document, {
    Collection: (_key, _group, way) => {
      // Between a group and one in it stands the pair of its key, except in lists.
      found ||= way.length > 2 * deepestGroups;
      return found ? visit.BREAK : undefined;
    },
  });
  return found;
}
