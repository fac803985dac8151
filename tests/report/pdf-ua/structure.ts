import { PDFArray, PDFDict, type PDFDocument, PDFName, type PDFObject, PDFRef } from "@cantoo/pdf-lib";

/** An element of the structure tree, or what stands for an annotation in it. */
export interface StructureElement {
  /** Standard type, after role mapping. */
  readonly type: string;
  readonly dict: PDFDict;
  readonly parent: StructureElement | undefined;
  readonly children: readonly StructureElement[];
  /** Annotations that it holds. */
  readonly annotations: readonly PDFDict[];
  readonly holdsContent: boolean;
}

export const name = (text: string): PDFName => PDFName.of(text);

/** The name in an entry, without its slash. */
export const nameIn = (dict: PDFDict, key: string): string | undefined =>
  dict.lookupMaybe(name(key), PDFName)?.decodeText();

export const dictIn = (dict: PDFDict, key: string): PDFDict | undefined => {
  const found = dict.lookup(name(key));
  return found instanceof PDFDict ? found : undefined;
};

/** Names that a document maps to others. */
export function roleMap(document: PDFDocument): ReadonlyMap<string, string> {
  const root = dictIn(document.catalog, "StructTreeRoot");
  const map = root && dictIn(root, "RoleMap");
  return new Map(
    map
      ?.entries()
      .map(([key, value]) => [key.decodeText(), value instanceof PDFName ? value.decodeText() : ""]),
  );
}

/** Every element of the structure tree, each before its children. */
export function structureElements(document: PDFDocument): StructureElement[] {
  const root = dictIn(document.catalog, "StructTreeRoot");
  if (!root) return [];
  const roles = roleMap(document);
  const all: StructureElement[] = [];
  const visit = (dict: PDFDict, parent: StructureElement | undefined): StructureElement => {
    const own = nameIn(dict, "S") ?? "";
    const children: StructureElement[] = [];
    const kids = kidsOf(dict, document);
    const element = {
      type: roles.get(own) ?? own,
      dict,
      parent,
      children,
      annotations: kids.flatMap((kid) => annotationOf(kid)),
      holdsContent: kids.some((kid) => !(kid instanceof PDFDict) || nameIn(kid, "Type") === "MCR"),
    };
    all.push(element);
    for (const kid of kids) {
      if (kid instanceof PDFDict && kid.has(name("S"))) children.push(visit(kid, element));
    }
    return element;
  };
  for (const kid of kidsOf(root, document)) if (kid instanceof PDFDict) visit(kid, undefined);
  return all;
}

function kidsOf(dict: PDFDict, { context }: PDFDocument): PDFObject[] {
  const kids = dict.get(name("K"));
  const resolved = kids instanceof PDFRef ? context.lookup(kids) : kids;
  const list = resolved instanceof PDFArray ? resolved.asArray() : resolved ? [resolved] : [];
  return list.flatMap((kid) => (kid instanceof PDFRef ? (context.lookup(kid) ?? []) : kid));
}

function annotationOf(kid: PDFObject): PDFDict[] {
  if (!(kid instanceof PDFDict) || nameIn(kid, "Type") !== "OBJR") return [];
  const annotation = dictIn(kid, "Obj");
  return annotation ? [annotation] : [];
}

/** Attributes of an element that belong to one owner: "Table", say. */
export function attributesOf({ dict }: StructureElement, owner: string): PDFDict[] {
  const found = dict.lookup(name("A"));
  const list = found instanceof PDFArray ? found.asArray().map((each) => dict.context.lookup(each)) : [found];
  return list.flatMap((each) => (each instanceof PDFDict && nameIn(each, "O") === owner ? each : []));
}
