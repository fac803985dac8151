import { PDFBool, PDFDict, PDFDocument, PDFRawStream } from "@cantoo/pdf-lib";
import { drawings } from "../pdf-pages.js";
import { markedContent } from "./marked-content.js";
import {
  attributesOf,
  dictIn,
  name,
  nameIn,
  roleMap,
  type StructureElement,
  structureElements,
} from "./structure.js";

/** A document taken apart once for all conditions. */
interface Parts {
  readonly document: PDFDocument;
  readonly elements: readonly StructureElement[];
  readonly pages: ReadonlyArray<ReturnType<typeof markedContent>>;
  readonly metadata: string;
}

/** Where a condition of failure is met, in words; none where it is not. */
type Condition = (parts: Parts) => string[];

const text = (condition: boolean, words: string): string[] => (condition ? [words] : []);

/** Structure types of ISO 32000-1, 14.8.4 (as the Matterhorn Protocol lists them in 01-006). */
const standardTypes = new Set(
  "Document Part Art Sect Div BlockQuote Caption TOC TOCI Index NonStruct Private P H H1 H2 H3 H4 H5 H6 L LI Lbl LBody Table TR TH TD THead TBody TFoot Span Quote Note Reference BibEntry Code Link Annot Ruby Warichu RB RT RP WT WP Figure Formula Form".split(
    " ",
  ),
);

/** Kinds of children that a table's or a list's elements may have (ISO 32000-1, tables 336 and 337; from memory). */
const children: Readonly<Record<string, readonly string[]>> = {
  Table: ["TR", "THead", "TBody", "TFoot", "Caption"],
  THead: ["TR"],
  TBody: ["TR"],
  TFoot: ["TR"],
  TR: ["TH", "TD"],
  L: ["L", "LI", "Caption"],
  LI: ["Lbl", "LBody"],
};
const parents: Readonly<Record<string, readonly string[]>> = {
  TR: ["Table", "THead", "TBody", "TFoot"],
  TH: ["TR"],
  TD: ["TR"],
  THead: ["Table"],
  TBody: ["Table"],
  TFoot: ["Table"],
  LI: ["L"],
  LBody: ["LI"],
};

const misplaced = (elements: readonly StructureElement[], types: readonly string[]): string[] =>
  elements.flatMap(({ type, parent, children: own }) => [
    ...(types.includes(type) && parents[type] && !parents[type].includes(parent?.type ?? "")
      ? [`${type} in ${parent?.type}`]
      : []),
    ...(types.includes(type) && children[type]
      ? own
          .filter((child) => !children[type]?.includes(child.type))
          .map((child) => `${child.type} in ${type}`)
      : []),
  ]);

const headingLevels = ({ elements }: Parts): number[] =>
  elements.flatMap(({ type }) => (/^H[1-6]$/.test(type) ? [Number(type[1])] : []));

const links = ({ document }: Parts): PDFDict[] =>
  annotations(document).filter((each) => nameIn(each, "Subtype") === "Link");

const annotations = (document: PDFDocument): PDFDict[] =>
  document.getPages().flatMap(
    ({ node }) =>
      node
        .Annots()
        ?.asArray()
        .map((each) => document.context.lookup(each, PDFDict)) ?? [],
  );

const objects = ({ document }: Parts, type: string): PDFDict[] =>
  document.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) => (object instanceof PDFDict && nameIn(object, "Type") === type ? [object] : []));

const preference = ({ document }: Parts) =>
  dictIn(document.catalog, "ViewerPreferences")?.lookup(name("DisplayDocTitle"));

/** Machine conditions of the Matterhorn Protocol 1.1 that a general PDF library can read, by their numbers. */
export const conditions: Readonly<Record<string, Condition>> = {
  "01-003": ({ pages }) =>
    text(
      pages.some((page) => page.artifactInTagged > 0),
      "artifact in tagged content",
    ),
  "01-004": ({ pages }) =>
    text(
      pages.some((page) => page.taggedInArtifact > 0),
      "tagged content in an artifact",
    ),
  "01-005": ({ pages }) =>
    pages.flatMap(({ unmarked, isBalanced }, page) => [
      ...unmarked.map((drawn) => `page ${page + 1}: ${drawn}`),
      ...text(!isBalanced, `page ${page + 1}: marks are not balanced`),
    ]),
  "01-007": ({ document }) =>
    text(dictIn(document.catalog, "MarkInfo")?.lookup(name("Suspects")) === PDFBool.True, "suspects"),
  "02-001": ({ elements }) => elements.flatMap(({ type }) => text(!standardTypes.has(type), type)),
  "02-003": ({ document }) => [...roleMap(document)].flatMap(([from, to]) => text(from === to, from)),
  "02-004": ({ document }) => [...roleMap(document).keys()].filter((from) => standardTypes.has(from)),
  "06-001": ({ metadata }) => text(metadata === "", "no XMP"),
  "06-002": ({ metadata }) => text(!/<pdfuaid:part>1<\/pdfuaid:part>/.test(metadata), "no identifier"),
  "06-003": ({ metadata }) =>
    text(!/<dc:title>[\s\S]*<rdf:li xml:lang="x-default">[^<]+</.test(metadata), "no title"),
  "07-001": (parts) => text(preference(parts) === undefined, "no DisplayDocTitle"),
  "07-002": (parts) => text(preference(parts) === PDFBool.False, "DisplayDocTitle is false"),
  "09-004": ({ elements }) => misplaced(elements, ["Table", "THead", "TBody", "TFoot", "TR", "TH", "TD"]),
  "09-005": ({ elements }) => misplaced(elements, ["L", "LI", "LBody"]),
  "10-001": (parts) =>
    objects(parts, "Font").flatMap((font) =>
      text(
        !nameIn(font, "Subtype")?.startsWith("CIDFont") && !font.has(name("ToUnicode")),
        `${nameIn(font, "BaseFont")}`,
      ),
    ),
  "11-001": ({ document }) => text(!document.catalog.has(name("Lang")), "no language"),
  "13-004": ({ elements }) =>
    elements.flatMap(({ type, dict }) =>
      text(
        type === "Figure" && !dict.has(name("Alt")) && !dict.has(name("ActualText")),
        "figure without a text",
      ),
    ),
  "14-002": (parts) => text(headingLevels(parts)[0] !== 1, `first heading is H${headingLevels(parts)[0]}`),
  "14-003": (parts) =>
    headingLevels(parts).flatMap((level, place, levels) =>
      text(place > 0 && level > (levels[place - 1] ?? 0) + 1, `H${level} after H${levels[place - 1]}`),
    ),
  "14-007": ({ elements }) =>
    text(
      elements.some(({ type }) => type === "H"),
      "H beside numbered headings",
    ),
  "15-003": ({ elements }) => {
    const isTied = (table: StructureElement): boolean =>
      attributesOf(table, "Table").some((each) => each.has(name("Scope")));
    return elements.flatMap((each) => text(each.type === "TH" && !isTied(each), "TH without a scope"));
  },
  "17-002": ({ elements }) =>
    elements.flatMap(({ type, dict }) =>
      text(type === "Formula" && !dict.has(name("Alt")), "formula without a text"),
    ),
  "19-003": ({ elements }) =>
    elements.flatMap(({ type, dict }) => text(type === "Note" && !dict.has(name("ID")), "note")),
  "21-001": (parts) =>
    objects(parts, "Filespec").flatMap((file) =>
      text(!file.has(name("F")) || !file.has(name("UF")), "file without a name"),
    ),
  "26-001": ({ document }) => text(document.isEncrypted, "encrypted"),
  "28-002": ({ document }) =>
    annotations(document).flatMap((each) =>
      text(nameIn(each, "Subtype") !== "Link", `${nameIn(each, "Subtype")}`),
    ),
  "28-008": ({ document }) =>
    document
      .getPages()
      .flatMap(({ node }, page) =>
        text((node.Annots()?.size() ?? 0) > 0 && nameIn(node, "Tabs") !== "S", `page ${page + 1}`),
      ),
  "28-011": (parts) => {
    const tied = new Set(
      parts.elements.flatMap(({ type, annotations: own }) => (type === "Link" ? own : [])),
    );
    return links(parts).flatMap((link) => text(!tied.has(link), "link outside a Link"));
  },
  "28-012": (parts) =>
    links(parts).flatMap((link) => text(!link.has(name("Contents")), "link without a text")),
  "31-009": (parts) =>
    objects(parts, "FontDescriptor").flatMap((font) =>
      text(
        !["FontFile", "FontFile2", "FontFile3"].some((file) => font.has(name(file))) &&
          nameIn(font, "FontName") !== undefined &&
          !isOfType3(font, parts),
        `${nameIn(font, "FontName")}`,
      ),
    ),
};

/** A Type 3 font draws its glyphs itself and has no file. */
const isOfType3 = (descriptor: PDFDict, parts: Parts): boolean =>
  objects(parts, "Font").some(
    (font) => nameIn(font, "Subtype") === "Type3" && font.lookup(name("FontDescriptor")) === descriptor,
  );

/** Conditions that a PDF meets, each with the first places where it does. */
export async function failures(pdf: Uint8Array): Promise<Record<string, readonly string[]>> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const parts: Parts = {
    document,
    elements: structureElements(document),
    pages: drawings(document).map(markedContent),
    metadata: metadataOf(document),
  };
  return Object.fromEntries(
    Object.entries(conditions).flatMap(([number, condition]) => {
      const found = condition(parts);
      return found.length === 0 ? [] : [[number, [`${found.length} times`, ...new Set(found)].slice(0, 6)]];
    }),
  );
}

function metadataOf({ catalog }: PDFDocument): string {
  const stream = catalog.lookup(name("Metadata"));
  return stream instanceof PDFRawStream ? Buffer.from(stream.contents).toString("utf8") : "";
}
