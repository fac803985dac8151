import { createHash } from "node:crypto";
import type { StudyEntry } from "../../app/study-entry.js";

/** The writer did not say which revision he had before him. */
export class MatchMissingError extends Error {}

/** The writer had another revision before him than the latest; absent where his tag is none of ours. */
export class MatchFailedError extends Error {
  constructor(
    readonly expected: number | undefined,
    readonly latest: StudyEntry,
  ) {
    super(`${latest.id} is at revision ${latest.revision}`);
  }
}

const digestLength = 16;

/** Names a revision by its number and content: a restored database may have another text under the same number. */
const revisionTag = ({ revision, savedAt, text }: StudyEntry) => {
  const digest = createHash("sha256").update(`${savedAt}\n${text}`).digest("hex");
  return `${revision}-${digest.slice(0, digestLength)}`;
};

/** The entity tag of a study as it is read, its state included. */
export const entityTag = (entry: StudyEntry): string => `"${revisionTag(entry)}.${entry.state}"`;

/**
 * The revision that a writer had before him, if it is the latest. A study that was only archived meanwhile has not changed.
 * @param header If-Match; "*" stands for whatever is the latest
 * @throws MatchMissingError, MatchFailedError
 */
export function matchedRevision(header: string | undefined, latest: StudyEntry): number {
  if (header === undefined) throw new MatchMissingError();
  const tags = header.split(",").map((tag) => tag.trim());
  // Worked out once: it takes the whole text, and a header may hold thousands of tags.
  const own = `"${revisionTag(latest)}.`;
  const isLatest = (tag: string) => tag === "*" || tag.startsWith(own);
  if (tags.some(isLatest)) return latest.revision;
  const number = /^"(\d+)-/.exec(tags[0] ?? "")?.[1];
  throw new MatchFailedError(number === undefined ? undefined : Number(number), latest);
}

/** Whether a reader has what the tag names. @param header If-None-Match */
export function isHeld(header: string | undefined, tag: string): boolean {
  const tags = (header ?? "").split(",").map((each) => each.trim().replace(/^W\//, ""));
  return tags.includes(tag) || tags.includes("*");
}
