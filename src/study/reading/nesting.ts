import { type Document, isAlias, Lexer, visit } from "yaml";

/** Deepest nesting of groups; a study needs a dozen. */
export const deepestGroups = 64;

/**
 * The first line nested deeper than any study. It is found before the parser sees the text: the parser recurses into
 * every group, takes many seconds over a long text, and ends the whole process if its stack overflows amid a pattern.
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
  /** Open brackets. */
  flow: number;
  /** Groups begun on this line: "- - a: b". */
  onLine: number;
  column: number;
  isBeforeText: boolean;
  /** Starting columns of the groups around this line. */
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

/** Whether a value of JSON has more groups within one another. */
export function isDeeper(value: unknown, most: number): boolean {
  if (typeof value !== "object" || value === null) return false;
  return most === 0 || Object.values(value).some((each) => isDeeper(each, most - 1));
}

/** Whether a parsed document is nested deeper than any study, and would overflow the stack later. */
export function isNestedTooDeep(document: Document): boolean {
  let found = false;
  visit(document, {
    Collection: (_key, _group, way) => {
      // Except in lists, the pair of a key stands between a group and the one within it.
      found ||= way.length > 2 * deepestGroups;
      return found ? visit.BREAK : undefined;
    },
  });
  return found;
}

/** Most anchors and aliases; a study needs a few. */
export const mostAliases = 1000;

/** Whether there are too many anchors and aliases: resolving them takes quadratic time. */
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
