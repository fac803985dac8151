import {
  type Document,
  isMap,
  isNode,
  isScalar,
  isSeq,
  type Node,
  Scalar,
  stringify,
  type YAMLMap,
} from "yaml";

/** What stands in place of a part of a text. */
export interface Patch {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Thrown where only writing the whole text anew would do. */
export class NotHereError extends Error {}

export function applied(text: string, patches: readonly Patch[]): string {
  const eol = text.includes("\r\n") ? "\r\n" : "\n";
  const ordered = patches.map((patch, index) => ({ ...patch, index }));
  ordered.sort((one, other) => other.from - one.from || other.index - one.index);
  return ordered.reduce(
    (before, { from, to, text: put }) => before.slice(0, from) + put.replaceAll("\n", eol) + before.slice(to),
    text,
  );
}

export interface Place {
  readonly text: string;
  readonly document: Document;
  /** Whether it stands within braces or brackets. */
  readonly isFlow: boolean;
}

export function rangeOf(node: Node): { from: number; to: number } {
  if (!node.range) throw new NotHereError();
  return { from: node.range[0], to: node.range[1] };
}

export const inFlow = (value: unknown): string =>
  stringify([value], { collectionStyle: "flow", lineWidth: 0 }).trimEnd().slice(1, -1).trim();

export interface Entry {
  readonly key: string;
  readonly keyNode: Node;
  readonly value: Node | null;
}

export function entriesOf(node: YAMLMap): Entry[] {
  const entries = node.items.map(({ key, value }) => {
    if (!isScalar(key) || (value !== null && !isNode(value))) throw new NotHereError();
    return { key: String(key.value), keyNode: key, value };
  });
  if (new Set(entries.map(({ key }) => key)).size < entries.length) throw new NotHereError();
  return entries;
}

export function at<Item>(items: readonly Item[], index: number): Item {
  const item = items[index];
  if (item === undefined) throw new NotHereError();
  return item;
}

export function itemLines(item: Node, { text, ...place }: Place): string {
  const from = lineStart(startOf(item), { text, ...place });
  return text.slice(from, lineEnd(contentEnd(item, { text, ...place }), text)).replaceAll("\r\n", "\n");
}

export function stringifyAt(value: unknown, column: number, isBraced = false): string {
  const indent = " ".repeat(column);
  const braced = isBraced && Array.isArray(value) ? `- ${inFlow(value[0])}` : undefined;
  const text = braced ?? stringify(value, { lineWidth: 0 }).trimEnd();
  return text
    .split("\n")
    .map((line) => (line === "" ? "" : indent + line))
    .join("\n");
}

export const startOf = (node: Node): number => rangeOf(node).from;

/** End of what an entry says, without comments after it. */
export const endOf = ({ keyNode, value }: Entry, place: Place): number =>
  value === null ? rangeOf(keyNode).to + 1 : contentEnd(value, place);

export function contentEnd(node: Node, place: Place): number {
  if (isMap(node) && !node.flow) return endOf(at(entriesOf(node), node.items.length - 1), place);
  const last = isSeq(node) && !node.flow ? node.items.at(-1) : undefined;
  if (isNode(last)) return contentEnd(last, place);
  const { to } = rangeOf(node);
  const isBlock = isScalar(node) && (node.type === Scalar.BLOCK_LITERAL || node.type === Scalar.BLOCK_FOLDED);
  return isBlock && place.text[to - 1] === "\n" ? to - 1 : to;
}

export const lineStart = (offset: number, { text }: Pick<Place, "text">): number =>
  text.lastIndexOf("\n", offset - 1) + 1;

function lineEnd(offset: number, text: string): number {
  const found = text.indexOf("\n", offset);
  return found < 0 ? text.length : text[found - 1] === "\r" ? found - 1 : found;
}

/** Column of a key that is the first of its line, or follows a dash. */
export function columnOf(node: Node, place: Place): number {
  const from = lineStart(startOf(node), place);
  if (!/^ *(- +)*$/.test(place.text.slice(from, startOf(node)))) throw new NotHereError();
  return startOf(node) - from;
}

export function dashColumn(item: Node, place: Place): number {
  const before = place.text.slice(lineStart(startOf(item), place), startOf(item));
  if (!/^ *- +$/.test(before)) throw new NotHereError();
  return before.indexOf("-");
}

/** Takes whole lines away, from the start of what stands there with nothing before it but a dash, if it has one. */
export function lines(start: number, end: number, { place, lead }: { place: Place; lead: RegExp }): Patch {
  const from = lineStart(start, place);
  if (!lead.test(place.text.slice(from, start))) throw new NotHereError();
  const to = lineEnd(end, place.text);
  return { from, to: place.text.indexOf("\n", to) + 1 || place.text.length, text: "" };
}

export const beforeKey = /^ *$/;
export const beforeItem = /^ *- +$/;

/** Puts whole lines after the line of a place; before the first line of all where it is −1. */
export function insertion(put: string, after: number, { text }: Place): Patch {
  if (after < 0) return { from: 0, to: 0, text: `${put}\n` };
  const end = lineEnd(after, text);
  return { from: end, to: end, text: `\n${put}` };
}
