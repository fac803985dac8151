import { deflateSync } from "node:zlib";
import {
  ParseSpeeds,
  PDFCrossRefStream,
  PDFDocument,
  PDFName,
  PDFObjectStream,
  PDFRawStream,
  type PDFRef,
} from "@cantoo/pdf-lib";
import { makeAccessible, type PdfDescription } from "./accessible-pdf.js";

export interface Attachment {
  readonly name: string;
  readonly type: string;
  readonly description: string;
  readonly bytes: Uint8Array;
}

/** A PDF as the browser printed it, with what its readers need beside its pages, and packed. */
export async function finishPrint(pdf: Uint8Array, description: PdfDescription): Promise<Uint8Array> {
  const document = await load(pdf);
  await makeAccessible(document, description);
  return packed(document);
}

/** What is added to a printed PDF before it is packed. */
interface Additions {
  readonly attachments?: readonly Attachment[];
  /** Of the attachments. */
  readonly date?: Date;
  readonly complete?: (document: PDFDocument) => void;
}

/**
 * A printed PDF with its objects packed, and files attached. Two thirds of a long report are the tags of its tables, one
 * object for each cell: packed together they take a tenth of that. Tags, bookmarks and pages stay as they are.
 */
export async function finishPdf(
  pdf: Uint8Array,
  { attachments = [], date = new Date(0), complete }: Additions = {},
): Promise<Uint8Array> {
  const document = await load(pdf);
  dropPackaging(document);
  for (const { name, type, description, bytes } of attachments) {
    await document.attach(bytes, name, {
      mimeType: type,
      description,
      creationDate: date,
      modificationDate: date,
    });
  }
  complete?.(document);
  return packed(document);
}

const load = (pdf: Uint8Array): Promise<PDFDocument> =>
  PDFDocument.load(pdf, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });

const packed = (document: PDFDocument): Promise<Uint8Array> =>
  document.save({
    useObjectStreams: true,
    objectsPerTick: Number.POSITIVE_INFINITY,
    updateFieldAppearances: false,
  });

/** An already packed PDF keeps its packages beside the objects that were in them; saved again, both would be written. */
function dropPackaging({ context }: PDFDocument): void {
  for (const [reference, object] of context.enumerateIndirectObjects()) {
    if (!(object instanceof PDFRawStream)) continue;
    const type = object.dict.get(PDFName.of("Type"));
    if (type === PDFName.of("ObjStm") || type === PDFName.of("XRef")) context.delete(reference);
  }
}

interface Entries {
  readonly entries: { readonly ref: PDFRef }[];
}
type Entry = Entries["entries"][number];

/** The library looks through all entries for the place of each, half of what a long report took to pack; they come in order. */
const table: { appendEntry: (this: Entries, entry: Entry) => void } = Object(PDFCrossRefStream.prototype);
const { appendEntry } = table;
table.appendEntry = function (entry) {
  const last = this.entries.at(-1);
  if (!last || last.ref.objectNumber < entry.ref.objectNumber) this.entries.push(entry);
  else appendEntry.call(this, entry);
};

/** The library packs objects by a script of its own, which takes several times as long as the engine's packer. */
const { withContextAndObjects } = PDFObjectStream;
PDFObjectStream.withContextAndObjects = (context, objects) => {
  const stream = withContextAndObjects(context, objects, false);
  stream.dict.set(PDFName.of("Filter"), PDFName.of("FlateDecode"));
  stream.updateContents(deflateSync(stream.getUnencodedContents()));
  return stream;
};
