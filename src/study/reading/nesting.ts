import { type Document, isAlias, Lexer, visit } from "yaml";

/** Groups within groups: a study needs a dozen. */
export const deepestGroups = 64;

/**
 * The line from which on groups are nested deeper than any study's. It is told before the parser sees the text: that one
 * calls itself for every group, takes many seconds over a long text, and where its stack ends amid a pattern the whole
 * process ends.
 */
export function lineNestedTooDeep(text: string): number | undefined {
  const nesting: Nesting = { flow: 0, onLine: 0, column: 0, isBeforeText: true, columns: [] };
  let line = 1;
  for (const token of new Lexer().lex(text)) {
    const isEndOfLine = token.endsWith("\n");
    if (!isEndOfLine || token.trim() !== "") follow(nesting, token);
    if (nesting.flow > deepestGroups || nesting.onLine + nesting.columns.length > deepestGroups) return line;
    if (isEndOfLine) Object.assign(nesting, { onLine: 0, column: 0, isBeforeText: true });
    line += token.split("\n").length - 1;
  }
  return undefined;
}

interface Nesting {
  /** Groups in brackets that are open. */
  flow: number;
  /** Groups that this line begins: "- - a: b". */
  onLine: number;
  column: number;
  isBeforeText: boolean;
  /** Columns at which the groups around this line begin. */
  readonly columns: number[];
}

function follow(nesting: Nesting, token: string): void {
  if (nesting.isBeforeText && token.trim() === "") nesting.column = token.length;
  else if (!token.startsWith("#")) {
    if (nesting.isBeforeText && nesting.flow === 0) beginAt(nesting);
    nesting.isBeforeText = false;
  }
  if (token === "[" || token === "{") nesting.flow += 1;
  else if (token === "]" || token === "}") nesting.flow = Math.max(0, nesting.flow - 1);
  else if (nesting.flow === 0 && ["-", "?", ":"].includes(token)) nesting.onLine += 1;
}

function beginAt({ column, columns }: Nesting): void {
  while ((columns.at(-1) ?? -1) >= column) columns.pop();
  columns.push(column);
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

/** Values named once and repeated by their name; a study needs a few. */
export const mostAliases = 1000;

/** Whether so many values are named or repeated that looking each up would take the square of their number. */
export function hasTooManyAliases(document: Document): boolean {
  let found = 0;
  visit(document, {
    Node: (_key, node) => {
      if (isAlias(node) || node.anchor !== undefined) found += 1;
      return found > mostAliases ? visit.BREAK : undefined;
    },
  });
  return found > mostAliases;
}
