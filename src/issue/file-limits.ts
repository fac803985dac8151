import { inflateSync } from "node:zlib";

/**
 * What a report that is verified may hold. The largest measured, of Sorrel Bend with its odds, has 88 pages, 22,367
 * objects, 615 streams and 10.3 MB once unpacked, 0.6 MB in the largest stream.
 */
export const fileLimits = {
  bytes: 24 * 1024 * 1024,
  objects: 400_000,
  streams: 40_000,
  pages: 3_000,
  attachments: 32,
  /** Bytes of one stream, and of all, once unpacked. */
  unpackedEach: 32 * 1024 * 1024,
  unpackedAll: 256 * 1024 * 1024,
} as const;

type FileLimits = { readonly [Name in keyof typeof fileLimits]: number };

/** A file that holds more than is read, in a sentence that says how much and what is allowed. */
export class FileLimitError extends Error {}

/**
 * Measures a PDF before anything in it is read: its objects, its streams, and what they come to once unpacked. Whatever
 * the dictionary of a stream says, bytes that unpack are counted, and none may be packed twice.
 * @throws FileLimitError
 */
export function checkFileLimits(pdf: Uint8Array, limits: FileLimits = fileLimits): void {
  const file = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  atMost(file.length, limits.bytes, "bytes");
  let streams = 0;
  let unpacked = 0;
  let objects = occurrences(file, " obj");
  for (const start of streamStarts(file)) {
    streams += 1;
    objects += packedObjects(file.toString("latin1", Math.max(0, start - dictionaryBytes), start));
    unpacked += unpackedSize(file.subarray(start), limits);
    atMost(streams, limits.streams, "streams");
    atMost(objects, limits.objects, "objects");
    atMost(unpacked, limits.unpackedAll, "bytes once unpacked");
  }
  atMost(objects, limits.objects, "objects");
}

/** @throws FileLimitError */
export function atMost(found: number, allowed: number, what: string): void {
  if (found > allowed) {
    throw new FileLimitError(`It holds more than ${allowed.toLocaleString("en-US")} ${what}.`);
  }
}

/** How far before a stream its dictionary is looked at for a number of packed objects. */
const dictionaryBytes = 300;

const packedObjects = (dictionary: string): number =>
  dictionary.includes("/ObjStm") ? Number(/\/N (\d{1,9})/.exec(dictionary)?.[1] ?? 0) : 0;

function occurrences(file: Buffer, word: string): number {
  let count = 0;
  for (let at = file.indexOf(word); at >= 0; at = file.indexOf(word, at + word.length)) count += 1;
  return count;
}

const [lineFeed, carriageReturn] = [0x0a, 0x0d];

/** Where the bytes of each stream start: after the word, and the end of its line. */
function* streamStarts(file: Buffer): Generator<number> {
  const word = "stream";
  for (let at = file.indexOf(word); at >= 0; at = file.indexOf(word, at + word.length)) {
    if (file.toString("latin1", Math.max(0, at - 3), at) === "end") continue;
    let start = at + word.length;
    if (file[start] === carriageReturn) start += 1;
    if (file[start] === lineFeed) start += 1;
    yield start;
  }
}

/** 0 for what is not packed. What follows the packed bytes is not looked at. */
function unpackedSize(packed: Uint8Array, { unpackedEach }: FileLimits): number {
  const once = unpack(packed, unpackedEach);
  if (!once) return 0;
  if (unpack(once, unpackedEach)) throw new FileLimitError("Something in it is packed twice.");
  return once.length;
}

function unpack(bytes: Uint8Array, most: number): Uint8Array | undefined {
  if (!isZlib(bytes)) return undefined;
  try {
    return inflateSync(bytes, { maxOutputLength: most });
  } catch (error) {
    if (error instanceof RangeError) atMost(most + 1, most, "bytes in one stream once unpacked");
    return undefined;
  }
}

/** RFC 1950, section 2.2: deflate, with a check of its two bytes. */
const isZlib = ([first = 0, second = 0]: Uint8Array): boolean =>
  (first & 0x0f) === 8 && (first * 256 + second) % 31 === 0;
