import { createHash } from "node:crypto";
import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFName,
  type PDFObject,
  type PDFPage,
  PDFRawStream,
  PDFRef,
} from "@cantoo/pdf-lib";
import { sha256 } from "../assumptions/digest.js";
import { readAttachments, unpackedBytes } from "./attachments.js";

/** What stands at each place of a document, as a digest: places that differ between two files are where one was altered. */
type Places = ReadonlyMap<string, string>;

/** How the objects are numbered and packed is in no digest, so that a file that was only saved anew has the same. */
export function placesOf(document: PDFDocument): Places {
  const digest = objectDigests(document);
  const { catalog, context } = document;
  const rest = [
    "Pages",
    "StructTreeRoot",
    "Outlines",
    "Metadata",
    "AcroForm",
    "Perms",
    "AF",
    "Names",
    "Dests",
  ];
  const names = catalog.lookup(PDFName.of("Names"));
  const at = (key: string) => digest(catalog.get(PDFName.of(key)));
  const info = context.trailerInfo.Info;
  return new Map([
    ...document.getPages().flatMap((page, index) => pagePlaces(page, index + 1, digest)),
    ["the number of pages", String(document.getPageCount())],
    ["title, author and dates of the file", digest(info) + at("Metadata")],
    ["what readers’ programs read aloud (tags)", at("StructTreeRoot")],
    ["bookmarks", at("Outlines")],
    ["form fields", at("AcroForm") + at("Perms")],
    [
      "settings of the file",
      entries(catalog, (key) => !rest.includes(key), digest) +
        (names instanceof PDFDict ? entries(names, (key) => key !== "EmbeddedFiles", digest) : ""),
    ],
    ...readAttachments(document).map(({ name, bytes }): [string, string] => [
      `the attachment ${name}`,
      sha256(bytes),
    ]),
  ]);
}

/** Places that are not the same in both. */
export const differingPlaces = (one: Places, other: Places): string[] =>
  [...new Set([...one.keys(), ...other.keys()])].filter((place) => one.get(place) !== other.get(place));

type Digest = (object: PDFObject | undefined) => string;

function pagePlaces({ node }: PDFPage, number: number, digest: Digest): [string, string][] {
  const own = ["Contents", "Resources", "Annots", "Parent", "StructParents"];
  const at = (key: string) => digest(node.get(PDFName.of(key)));
  return [
    [`page ${number}: what is drawn on it`, at("Contents")],
    [`page ${number}: its fonts and pictures`, at("Resources")],
    [`page ${number}: notes and links on it`, at("Annots")],
    [`page ${number}: its size and what is cropped`, entries(node, (key) => !own.includes(key), digest)],
  ];
}

const entries = (dictionary: PDFDict, isMeant: (key: string) => boolean, digest: Digest): string =>
  dictionary
    .entries()
    .map(([key, value]) => [key.decodeText(), value] as const)
    .filter(([key]) => isMeant(key))
    .map(([key, value]) => `${key} ${digest(value)}`)
    .sort()
    .join("\n");

/** Ways back up, which would lead through the whole document. */
const upwards = ["Parent", "P", "Prev", "Last"];

/** How a stream is packed. */
const packing = ["Length", "Filter"];

/** Digest of an object with all that it refers to; a page that is referred to counts by its number. */
function objectDigests(document: PDFDocument): Digest {
  const known = new Map<PDFRef, string>(
    document.getPages().map(({ ref }, index) => [ref, `page ${index + 1}`] as const),
  );
  const digest: Digest = (object) => {
    if (object instanceof PDFRef) return followed(object);
    if (object instanceof PDFRawStream) {
      return hashed(
        entries(object.dict, (key) => !packing.includes(key), digest),
        unpacked(object),
      );
    }
    if (object instanceof PDFArray) return hashed(...object.asArray().map(digest));
    if (object instanceof PDFDict) return hashed(entries(object, (key) => !upwards.includes(key), digest));
    return String(object);
  };
  const followed = (reference: PDFRef): string => {
    const before = known.get(reference);
    if (before !== undefined) return before;
    known.set(reference, "further up");
    const found = digest(document.context.lookup(reference));
    known.set(reference, found);
    return found;
  };
  return digest;
}

function hashed(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(part).update("\n");
  return hash.digest("base64url");
}

function unpacked(stream: PDFRawStream): Uint8Array {
  try {
    return unpackedBytes(stream);
  } catch {
    return stream.getContents();
  }
}
