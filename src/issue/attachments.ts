import { inflateSync } from "node:zlib";
import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFString,
} from "@cantoo/pdf-lib";
import { atMost, fileLimits } from "./file-limits.js";

interface ReadAttachment {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * The files inside a PDF, counted before the first is unpacked.
 * @throws FileLimitError where they are more or larger than an issued report has
 */
export function readAttachments(document: PDFDocument): ReadAttachment[] {
  const names = document.catalog.lookupMaybe(PDFName.of("Names"), PDFDict);
  const files = names?.lookupMaybe(PDFName.of("EmbeddedFiles"), PDFDict);
  const list = files?.lookupMaybe(PDFName.of("Names"), PDFArray);
  if (!list) return [];
  const count = list.size() / 2;
  atMost(count, fileLimits.attachments, "attachments");
  return Array.from({ length: count }, (_each, index) => ({
    name: list.lookup(2 * index, PDFString, PDFHexString).decodeText(),
    bytes: fileBytes(list.lookup(2 * index + 1, PDFDict)),
  }));
}

function fileBytes(specification: PDFDict): Uint8Array {
  const stream = specification.lookup(PDFName.of("EF"), PDFDict).lookup(PDFName.of("F"));
  if (!(stream instanceof PDFRawStream)) throw new Error("an attachment without bytes");
  return unpackedBytes(stream);
}

/** Bytes of a stream; what is not packed, or in another way than this program packs, as it stands. */
export function unpackedBytes(stream: PDFRawStream): Uint8Array {
  const bytes = stream.getContents();
  if (stream.dict.get(PDFName.of("Filter")) !== PDFName.of("FlateDecode")) return bytes;
  return inflateSync(bytes, { maxOutputLength: fileLimits.unpackedEach });
}
