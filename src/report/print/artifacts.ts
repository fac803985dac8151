import { promisify } from "node:util";
import { deflate, inflate } from "node:zlib";
import { PDFArray, type PDFDocument, PDFName, type PDFObject, PDFRawStream, PDFRef } from "@cantoo/pdf-lib";

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

const packed = promisify<Uint8Array, Buffer>(deflate);
const unpacked = promisify<Uint8Array, Buffer>(inflate);

/** Pages that are unpacked and packed at once, beside this thread: all those of a long report would take its memory. */
const mostAtOnce = 4;

/** Marks what no page's tags hold as artifacts. */
export async function markArtifacts(document: PDFDocument): Promise<void> {
  const drawings = document.getPages().flatMap(({ node }) => {
    const contents = node.get(PDFName.of("Contents"));
    return contents instanceof PDFArray ? contents.asArray() : [contents];
  });
  const open = drawings.values();
  const markOpen = async () => {
    for (const reference of open) await markDrawing(document, reference);
  };
  await Promise.all(Array.from({ length: mostAtOnce }, markOpen));
}

async function markDrawing({ context }: PDFDocument, reference: PDFObject | undefined): Promise<void> {
  const stream = reference && context.lookup(reference);
  if (!(reference instanceof PDFRef) || !(stream instanceof PDFRawStream)) return;
  const isPacked = stream.dict.get(filter) === flate;
  const plain = isPacked ? await unpacked(stream.contents) : Buffer.from(stream.contents);
  const marked = await packed(Buffer.from(withArtifacts(plain.toString("latin1")), "latin1"));
  const dict = stream.dict.clone(context);
  dict.set(filter, flate);
  dict.set(length, context.obj(marked.length));
  context.assign(reference, PDFRawStream.of(dict, marked));
}
