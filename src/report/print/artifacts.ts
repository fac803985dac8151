import { deflateSync, inflateSync } from "node:zlib";
import { PDFArray, type PDFDocument, PDFName, PDFRawStream, PDFRef } from "@cantoo/pdf-lib";

/** Strings are passed over, so that no operator is seen in them; the browser writes each operator at the end of a line. */
const marksAndPaint =
  /\((?:\\[\s\S]|[^\\()])*\)|(?<![/\w])(?:BDC|BMC|EMC|Tj|TJ|Do|sh|f\*?|F|B\*?|b\*?|S|s)(?=\s)/g;

/**
 * A page's drawing with all that bears no mark of the tags' marked as an artifact, for readers to pass over: the
 * ground of the sheet, its foot, lines that the browser leaves unmarked.
 */
export function withArtifacts(drawing: string): string {
  const pieces: string[] = [];
  let [depth, start, paints] = [0, 0, false];
  const closeGap = (end: number) => {
    const gap = drawing.slice(start, end);
    pieces.push(paints ? `/Artifact BMC\n${gap}EMC\n` : gap);
    [start, paints] = [end, false];
  };
  for (const { 0: token, index } of drawing.matchAll(marksAndPaint)) {
    if (token === "BDC" || token === "BMC") {
      if (depth === 0) closeGap(drawing.lastIndexOf("\n", index) + 1);
      depth += 1;
    } else if (token === "EMC") {
      depth -= 1;
      if (depth > 0) continue;
      const end = index + token.length + 1;
      pieces.push(drawing.slice(start, end));
      start = end;
    } else if (depth === 0 && !token.startsWith("(")) paints = true;
  }
  closeGap(drawing.length);
  return pieces.join("");
}

const filter = PDFName.of("Filter");
const length = PDFName.of("Length");
const flate = PDFName.of("FlateDecode");

/** Marks what no page's tags hold as artifacts. */
export function markArtifacts(document: PDFDocument): void {
  const { context } = document;
  for (const { node } of document.getPages()) {
    const contents = node.get(PDFName.of("Contents"));
    const references = contents instanceof PDFArray ? contents.asArray() : [contents];
    for (const reference of references) {
      const stream = reference && context.lookup(reference);
      if (!(reference instanceof PDFRef) || !(stream instanceof PDFRawStream)) continue;
      const isPacked = stream.dict.get(filter) === flate;
      const plain = isPacked ? inflateSync(stream.contents) : stream.contents;
      const marked = withArtifacts(Buffer.from(plain).toString("latin1"));
      const packed = deflateSync(Buffer.from(marked, "latin1"));
      const dict = stream.dict.clone(context);
      dict.set(filter, flate);
      dict.set(length, context.obj(packed.length));
      context.assign(reference, PDFRawStream.of(dict, packed));
    }
  }
}
