import { type Document, isAlias, isCollection, isScalar, isSeq } from "yaml";
import { contentOf, parseText, placedDocument } from "../study/reading/read.js";
import { withKeptLines } from "./lines/kept-lines.js";

export type Place = readonly (string | number)[];

/** A change to a study's text at one place. */
export type Edit =
  | { readonly at: Place; readonly value: unknown }
  | { readonly at: Place; readonly remove: true }
  /** Moves an item to another place in its list. */
  | { readonly at: Place; readonly moveTo: number };

/** The document in a study's text. @throws InputError if the text is neither JSON nor YAML */
export const rawOf = (text: string, name: string): unknown => parseText(text, name);

/**
 * The text with changes applied in order. Lines in which nothing changes stay as they are; JSON stays JSON. Removing or
 * moving a missing place does nothing.
 * @throws InputError if the text is neither JSON nor YAML, so that no place can be found
 */
export function edited(text: string, edits: readonly Edit[]): string {
  if (edits.length === 0) return text;
  const name = "The study's text";
  const before = placedDocument(text, name);
  // Before any alias is followed: deep ones take for ever.
  contentOf(before, name);
  const document = before.clone();
  for (const edit of edits) apply(document, edit);
  const content = contentOf(document, name);
  if (isJson(text)) return `${JSON.stringify(content, null, 2)}\n`;
  return withKeptLines(text, before, content) ?? document.toString({ lineWidth: 0 });
}

const isJson = (text: string) => text.trimStart().startsWith("{");

function apply(document: Document, edit: Edit): void {
  if ("value" in edit) {
    openWay(document, edit.at);
    const found = document.getIn(edit.at, true);
    if (isSeq(found) && isPlainList(edit.value)) found.items = keptItems(found.items, edit.value, document);
    else if (typeof edit.value === "object") document.setIn(edit.at, document.createNode(edit.value));
    else document.setIn(edit.at, edit.value);
    return;
  }
  if (!document.hasIn(edit.at)) return;
  unalias(document, edit.at);
  if ("remove" in edit) {
    document.deleteIn(edit.at);
    return;
  }
  const list = document.getIn(edit.at.slice(0, -1), true);
  if (!isSeq(list)) return;
  const [moved] = list.items.splice(Number(edit.at.at(-1)), 1);
  list.items.splice(edit.moveTo, 0, moved);
}

const isPlainList = (value: unknown): value is readonly unknown[] =>
  Array.isArray(value) && value.every((item) => typeof item !== "object");

/** Replaces the items of a list of plain values; those that stay keep their comments. */
function keptItems(before: readonly unknown[], values: readonly unknown[], document: Document): unknown[] {
  const left = [...before];
  return values.map((value) => {
    const place = left.findIndex((node) => isScalar(node) && node.value === value);
    return place < 0 ? document.createNode(value) : left.splice(place, 1)[0];
  });
}

/** Creates the groups and lists on the way to a place, replacing values that cannot contain any. */
function openWay(document: Document, at: Place): void {
  unalias(document, at);
  for (let length = 0; length < at.length; length += 1) {
    const way = at.slice(0, length);
    const found = length === 0 ? document.contents : document.getIn(way, true);
    const holdsItems = typeof at[length] === "number";
    if (isCollection(found) && isSeq(found) === holdsItems) {
      if (found.items.length === 0) found.flow = false;
    } else if (length === 0) {
      document.contents = document.createNode({});
    } else {
      document.setIn(way, document.createNode(holdsItems ? [] : {}));
    }
  }
}

/** Gives an alias a copy of its own, so that only it changes. */
function unalias(document: Document, at: Place): void {
  for (let length = 1; length < at.length; length += 1) {
    const way = at.slice(0, length);
    const found = document.getIn(way, true);
    if (!isAlias(found)) continue;
    const copy: unknown = found.resolve(document)?.toJS(document);
    document.setIn(way, document.createNode(copy));
  }
}
