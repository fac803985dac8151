import { LRUCache } from "lru-cache";
import { sha256 } from "../../assumptions/digest.js";

/** Characters of all records that are at hand: some two hundred of twenty years of days. */
const mostCharacters = 64 * 1024 * 1024;

/**
 * Records by their digest, for the whole process: a digest names one text wherever it comes from, so that what is read
 * is the same whoever put it here. Where a study comes from, its records are put here before it is read.
 */
const atHand = new LRUCache<string, string>({
  maxSize: mostCharacters,
  sizeCalculation: (text) => text.length + 1,
});

/** Records have the line ends of Unix, whatever a version-control tool makes of them. */
export const recordText = (text: string): string => text.replaceAll("\r\n", "\n");

export const recordDigest = (text: string): string => sha256(recordText(text));

/** Puts a record at hand. @returns its digest */
export function takeRecord(text: string): string {
  const digest = recordDigest(text);
  atHand.set(digest, recordText(text));
  return digest;
}

export const recordAtHand = (digest: string): string | undefined => atHand.get(digest);

export const digestPattern = /^[0-9a-f]{64}$/;
const named = /\bkept["']?\s*:\s*["']?([0-9a-f]{64})\b/g;

/** Digests of the records that a study's text names, each once. */
export const recordsNamed = (text: string): string[] => [
  ...new Set(Array.from(text.matchAll(named), ([, digest = ""]) => digest)),
];

/** The records that are named in texts and at hand: to be sent along with them. */
export function recordsFor(texts: readonly string[]): string[] {
  const digests = new Set(texts.flatMap(recordsNamed));
  return [...digests].flatMap((digest) => recordAtHand(digest) ?? []);
}
