import { counted } from "../counted.js";
import { figureDifferences } from "./figure-differences.js";
import { differingPlaces, placesOf } from "./places.js";
import type { ReadIssue } from "./read-issue.js";

/** Where an altered report is not what was issued, in sentences. */
export function whereAltered(issued: ReadIssue, altered: ReadIssue): string[] {
  const { differences } = figureDifferences(issued.record, altered.record, ["digest"]);
  const places = differing(issued, altered);
  const sentences = [
    ...differences.map(
      ({ place, issued: was, recomputed: is }) =>
        `Its ${fieldNames[place] ?? place} was “${was}” and is “${is}”.`,
    ),
    ...shortened(places).map((place) => `Another than issued: ${place}.`),
  ];
  return sentences.length > 0 ? sentences : ["It differs only in bytes that no reader’s program shows."];
}

/** What a reader calls the fields of a record, where the name alone does not say. */
const fieldNames: Readonly<Record<string, string>> = {
  issuedAt: "date of issue",
  signedBy: "key",
  engineVersion: "version of the program",
  "study.id": "study",
  "study.name": "name of the study",
  "study.revision": "revision",
  "study.fileName": "file name",
  "supersedes.number": "issue that it takes the place of",
  "supersedes.issuedAt": "date of the issue that it takes the place of",
};

/** A document that was altered may be no sound one any more. */
function differing(issued: ReadIssue, altered: ReadIssue): string[] {
  const original = placesOf(issued.document);
  try {
    return differingPlaces(original, placesOf(altered.document));
  } catch {
    return ["the structure of the file, which cannot be followed any more"];
  }
}

const mostPlaces = 40;

function shortened(places: readonly string[]): string[] {
  const left = places.length - mostPlaces;
  return left > 0 ? [...places.slice(0, mostPlaces), `${counted(left, "more place")}`] : [...places];
}
