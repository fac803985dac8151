import { decodePDFRawStream, PDFArray, type PDFDocument, PDFRawStream, PDFStream } from "@cantoo/pdf-lib";

/** The drawing of each page, as its operators stand in the file. */
export const drawings = (document: PDFDocument): string[] =>
  document.getPages().map(({ node }) => {
    const contents = node.Contents();
    const streams =
      contents instanceof PDFArray
        ? contents.asArray().map((each) => document.context.lookup(each))
        : [contents];
    return streams
      .map((stream) => (stream instanceof PDFStream ? Buffer.from(bytesOf(stream)).toString("latin1") : ""))
      .join("\n");
  });

const bytesOf = (stream: PDFStream): Uint8Array =>
  stream instanceof PDFRawStream ? decodePDFRawStream(stream).decode() : stream.getContents();

/** What glyphs stand for where the file says so beside them: letters put together from parts, say. */
export const actualTexts = (drawing: string): string[] =>
  [...drawing.matchAll(/\/ActualText <feff([\da-f]*)>/gi)].map(([, hex = ""]) =>
    Buffer.from(hex, "hex").swap16().toString("utf16le"),
  );
