import { PDFArray, type PDFDocument, PDFName, PDFRawStream, PDFRef } from "@cantoo/pdf-lib";
import { sha256 } from "./digest.js";

/**
 * SHA-256 of what a PDF prints: the drawing of each page in order, and every font, picture and note that pages may use.
 * Attachments are not in it, nor how the file is packed.
 */
export function pagesDigest(document: PDFDocument): string {
  const { context } = document;
  const drawn = document.getPages().map(({ node }) => {
    const contents = node.get(PDFName.of("Contents"));
    const streams = contents instanceof PDFArray ? contents.asArray() : [contents];
    return streams.map((each) => streamDigest(each instanceof PDFRef ? context.lookup(each) : each)).join();
  });
  const used = context
    .enumerateIndirectObjects()
    .map(([, object]) => object)
    .filter((object) => object instanceof PDFRawStream && !isPackaging(object))
    .map(streamDigest)
    .sort();
  return sha256([...drawn, "", ...used].join("\n"));
}

const streamDigest = (object: unknown): string =>
  object instanceof PDFRawStream ? sha256(object.getContents()) : "";

/** Streams that hold attachments, or other objects packed together. */
const packaging = ["EmbeddedFile", "ObjStm", "XRef"].map((name) => PDFName.of(name));

function isPackaging({ dict }: PDFRawStream): boolean {
  const type = dict.get(PDFName.of("Type"));
  return packaging.some((each) => each === type);
}
