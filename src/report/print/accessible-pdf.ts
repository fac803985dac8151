import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFString,
} from "@cantoo/pdf-lib";
import Handlebars from "handlebars";
import { forXml } from "../../study/reading/characters.js";
import { markArtifacts } from "./artifacts.js";

/** What the tags of a report tell that its printed pages do not. */
export interface PdfDescription {
  readonly title: string;
  /** What links lead to, in words, by its id. */
  readonly targets: ReadonlyMap<string, string>;
}

/**
 * Mends what the browser leaves out of a tagged PDF or writes otherwise than PDF/UA-1 asks. The tests look for the
 * conditions of failure by the numbers of the Matterhorn Protocol (tests/report/pdf-ua/).
 */
export async function makeAccessible(document: PDFDocument, description: PdfDescription): Promise<void> {
  await Promise.all([markArtifacts(document), mendObjects(document, description)]);
}

async function mendObjects(document: PDFDocument, { title, targets }: PdfDescription): Promise<void> {
  for (const [, object] of document.context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFDict)) continue;
    if (object.get(typeKey) === structureElement) mendTag(object);
    if (object.get(kind) === name("LI")) nestLists(object);
    if (object.get(subtype) === link) describeLink(object, targets);
  }
  addMetadata(document, title);
}

const name = (text: string): PDFName => PDFName.of(text);
const [typeKey, kind, subtype, kids, parent] = [
  name("Type"),
  name("S"),
  name("Subtype"),
  name("K"),
  name("P"),
];
const [structureElement, link] = [name("StructElem"), name("Link")];

/** Emphasis has no type of its own before PDF 2.0; a list item's words are its body; a figure with its caption is a division. */
function mendTag(tag: PDFDict): void {
  const own = tag.get(kind);
  if (own === name("Strong") || own === name("Em")) tag.set(kind, name("Span"));
  else if (own === name("NonStruct") && isItem(tag.lookup(parent))) tag.set(kind, name("LBody"));
  else if (own === name("Figure") && !tag.has(name("Alt")) && holdsTagsAlone(tag)) tag.set(kind, name("Div"));
}

/** A list within an item belongs to the item's words, after which the browser puts it. */
function nestLists(item: PDFDict): void {
  const { context } = item;
  const list = item.lookup(kids);
  if (!(list instanceof PDFArray)) return;
  const tags = list.asArray().map((reference) => ({ reference, tag: context.lookup(reference) }));
  const isNested = (tag: PDFObject | undefined) => tag instanceof PDFDict && tag.get(kind) === name("L");
  const nested = tags.filter(({ tag }) => isNested(tag));
  const words = tags.find(({ tag }) => tag instanceof PDFDict && bodies.has(tag.get(kind)));
  if (nested.length === 0 || !(words?.tag instanceof PDFDict)) return;
  const own = words.tag.lookup(kids);
  const before = own instanceof PDFArray ? own.asArray() : [words.tag.get(kids)];
  words.tag.set(kids, context.obj([...before, ...nested.map(({ reference }) => reference)]));
  item.set(kids, context.obj(tags.flatMap(({ reference, tag }) => (isNested(tag) ? [] : [reference]))));
  for (const { tag } of nested) if (tag instanceof PDFDict) tag.set(parent, words.reference);
}

/** What an item's words are called before and after mending. */
const bodies = new Set<PDFObject | undefined>([name("NonStruct"), name("LBody")]);

const isItem = (tag: PDFObject | undefined): boolean =>
  tag instanceof PDFDict && tag.get(kind) === name("LI");

function holdsTagsAlone(tag: PDFDict): boolean {
  const held = tag.lookup(kids);
  const list = held instanceof PDFArray ? held.asArray() : [held];
  return list.every((each) => {
    const kid = each && tag.context.lookup(each);
    return kid instanceof PDFDict && kid.has(kind);
  });
}

function describeLink(annotation: PDFDict, targets: PdfDescription["targets"]): void {
  const target = annotation.lookup(name("Dest"));
  const id = target instanceof PDFName || target instanceof PDFString ? target.decodeText() : "";
  annotation.set(name("Contents"), PDFHexString.fromText(targets.get(id) ?? id));
}

function addMetadata({ catalog, context }: PDFDocument, title: string): void {
  const stream = context.stream(metadata(Handlebars.escapeExpression(forXml(title))), {
    Type: "Metadata",
    Subtype: "XML",
  });
  catalog.set(name("Metadata"), context.register(stream));
}

/** XMP with the title and the mark of PDF/UA-1. @param title as text of XML */
const metadata = (title: string): Uint8Array =>
  Buffer.from(`<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<pdfuaid:part>1</pdfuaid:part>
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${title}</rdf:li></rdf:Alt></dc:title>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>`);
