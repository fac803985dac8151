import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Node,
  parse,
  Scalar,
  stringify,
  visit,
  type YAMLMap,
  YAMLParseError,
  type YAMLSeq,
} from "yaml";
import { aligned, saysSame } from "./aligned.js";
import {
  applied,
  at,
  beforeItem,
  beforeKey,
  columnOf,
  contentEnd,
  dashColumn,
  type Entry,
  endOf,
  entriesOf,
  inFlow,
  insertion,
  itemLines,
  lineStart,
  lines,
  NotHereError,
  type Patch,
  type Place,
  rangeOf,
  startOf,
  stringifyAt,
} from "./line-patches.js";

/**
 * A text of YAML with another content, all lines kept in which nothing differs: their order, spaces, quotes and comments.
 * @param document of the text, with its places
 * @returns undefined where it cannot be done so: then the whole text is written anew
 */
export function withKeptLines(text: string, document: Document, content: unknown): string | undefined {
  if (hasAliases(document) || !isNode(document.contents)) return undefined;
  try {
    const patches = patchesOf(document.contents, content, { text, document, isFlow: false });
    const patched = applied(text, patches);
    return saysSame(parse(patched, { uniqueKeys: false, logLevel: "error" }), content) ? patched : undefined;
  } catch (error) {
    if (error instanceof NotHereError || error instanceof YAMLParseError) return undefined;
    throw error;
  }
}

function hasAliases(document: Document): boolean {
  let found = false;
  visit(document, {
    Node: (_key, node) => {
      if (isAlias(node) || ("anchor" in node && node.anchor)) found = true;
      return found ? visit.BREAK : undefined;
    },
  });
  return found;
}

const plainOf = (node: unknown, { document }: Place): unknown =>
  isNode(node) ? node.toJS(document, { maxAliasCount: 100 }) : node;

const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** @throws NotHereError */
function patchesOf(node: Node, wanted: unknown, place: Place): Patch[] {
  if (saysSame(plainOf(node, place), wanted)) return [];
  if (isMap(node) && isGroup(wanted) && node.items.length > 0) return mapPatches(node, wanted, place);
  if (isSeq(node) && Array.isArray(wanted) && node.items.length > 0) return seqPatches(node, wanted, place);
  if (isScalar(node) && node.value !== null && isPlainValue(wanted))
    return [scalarPatch(node, wanted, place)];
  if (!place.isFlow) throw new NotHereError();
  return [{ ...rangeOf(node), text: inFlow(wanted) }];
}

const isPlainValue = (value: unknown): boolean =>
  value !== null && typeof value !== "object" && !(typeof value === "string" && value.includes("\n"));

function scalarPatch(node: Scalar, wanted: unknown, { isFlow }: Place): Patch {
  if (node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED) throw new NotHereError();
  return { ...rangeOf(node), text: scalarText(node.type, wanted, isFlow) };
}

/** In the quotes that it had, if it had any. */
function scalarText(type: Scalar["type"], wanted: unknown, isFlow: boolean): string {
  if (typeof wanted === "string" && type === Scalar.QUOTE_DOUBLE) return JSON.stringify(wanted);
  if (typeof wanted === "string" && type === Scalar.QUOTE_SINGLE) return `'${wanted.replaceAll("'", "''")}'`;
  return isFlow ? inFlow(wanted) : stringify(wanted, { lineWidth: 0 }).trimEnd();
}

function mapPatches(node: YAMLMap, wanted: Record<string, unknown>, place: Place): Patch[] {
  const entries = entriesOf(node);
  const isSame = entries.map(({ key }) => key).join("\n") === Object.keys(wanted).join("\n");
  if (node.flow && !isSame) return [{ ...rangeOf(node), text: inFlow(wanted) }];
  const inner = { ...place, isFlow: node.flow === true };
  const patches = entries.flatMap((entry) => entryPatches(entry, wanted, inner));
  const known = new Map(entries.map((entry) => [entry.key, entry]));
  const column = node.flow ? 0 : columnOf(at(entries, 0).keyNode, place);
  let last: Entry | undefined;
  const added = Object.entries(wanted).flatMap(([key, value]): Patch[] => {
    const found = known.get(key);
    if (found) {
      last = found;
      return [];
    }
    const before = last ?? entries.findLast((entry) => Object.hasOwn(wanted, entry.key));
    if (!before) throw new NotHereError();
    return [insertion(stringifyAt({ [key]: value }, column), endOf(before, place), place)];
  });
  return [...patches, ...added];
}

function entryPatches(entry: Entry, wanted: Record<string, unknown>, place: Place): Patch[] {
  if (!Object.hasOwn(wanted, entry.key))
    return [lines(startOf(entry.keyNode), endOf(entry, place), { place, lead: beforeKey })];
  const value = wanted[entry.key];
  if (entry.value === null) {
    return value === null ? [] : [wholeEntry(entry, value, place)];
  }
  try {
    return patchesOf(entry.value, value, place);
  } catch (error) {
    if (!(error instanceof NotHereError) || place.isFlow) throw error;
    return [wholeEntry(entry, value, place)];
  }
}

/** An entry written anew, the lines around it kept. */
function wholeEntry(entry: Entry, value: unknown, place: Place): Patch {
  if (place.isFlow) throw new NotHereError();
  const from = startOf(entry.keyNode);
  const text = stringifyAt({ [entry.key]: value }, columnOf(entry.keyNode, place)).trimStart();
  return { from, to: endOf(entry, place), text };
}

function seqPatches(node: YAMLSeq, wanted: readonly unknown[], place: Place): Patch[] {
  const items = node.items.map((item) => {
    if (!isNode(item) || isPair(item)) throw new NotHereError();
    return item;
  });
  const values = items.map((item) => plainOf(item, place));
  const steps = aligned(values, wanted);
  if (!steps || (node.flow && steps.some(({ from, to }) => from === undefined || to === undefined))) {
    if (node.flow) return [{ ...rangeOf(node), text: inFlow(wanted) }];
    throw new NotHereError();
  }
  const inner = { ...place, isFlow: node.flow === true };
  const column = node.flow ? 0 : dashColumn(at(items, 0), place);
  const isBraced = items.every((item) => isCollection(item) && item.flow);
  let last: Node | undefined;
  return steps.flatMap(({ from, to }): Patch[] => {
    if (from === undefined) {
      const value = wanted[to ?? 0];
      const moved = values.findIndex((each) => saysSame(each, value));
      const text = moved >= 0 ? itemLines(at(items, moved), place) : stringifyAt([value], column, isBraced);
      const end = last ? contentEnd(last, place) : undefined;
      return [insertion(text, end ?? lineStart(startOf(at(items, 0)), place) - 1, place)];
    }
    const item = at(items, from);
    if (to === undefined) return [lines(startOf(item), contentEnd(item, place), { place, lead: beforeItem })];
    last = item;
    return patchesOf(item, wanted[to], inner);
  });
}
