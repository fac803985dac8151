import { type Problem, pathText, valueAt } from "../reading/problems.js";
import { digestPattern, recordAtHand } from "./at-hand.js";

type Place = readonly PropertyKey[];

interface Kept {
  readonly place: Place;
  readonly digest: string;
}

/** Records of levels in a document that name their text by its digest. */
export function keptRecords(document: unknown): Kept[] {
  const others = valueAt(document, ["lake", "otherSchedules"]);
  const places: Place[] = [
    ["lake", "record"],
    ...(Array.isArray(others) ? others : []).map((_each, index) => [
      "lake",
      "otherSchedules",
      index,
      "record",
    ]),
  ];
  return places.flatMap((place) => {
    const digest = valueAt(document, [...place, "kept"]);
    return typeof digest === "string" && digestPattern.test(digest) ? [{ place, digest }] : [];
  });
}

/** A document with the text of each kept record under `csv`; the one given stays as it is. */
export function withKeptRecords(document: unknown): {
  readonly document: unknown;
  readonly problems: readonly Problem[];
} {
  let whole = document;
  const problems: Problem[] = [];
  for (const { place, digest } of keptRecords(document)) {
    const path = pathText([...place, "kept"], document);
    const at = [...place, "kept"];
    const csv = recordAtHand(digest);
    if (valueAt(document, [...place, "csv"]) !== undefined) problems.push({ path, at, ...both });
    else if (csv === undefined) problems.push({ path, at, ...notThere(digest) });
    else whole = put(whole, [...place, "csv"], csv);
  }
  return { document: whole, problems };
}

const both = {
  found: "a kept record beside csv",
  allowed: "one of the two",
  remedy: "Take out csv, or kept.",
};

const notThere = (digest: string) => ({
  found: `the record ${digest.slice(0, shownDigits)}…, which is not kept here`,
  allowed: "a record that is kept beside the study",
  remedy: "Read its file again on the page of records, or put it in the folder “records” beside the study.",
});
const shownDigits = 12;

/** A copy with a value at a place that there is; the groups and lists on the way are copies. */
function put(document: unknown, [key, ...rest]: Place, value: unknown): unknown {
  if (key === undefined) return value;
  const below = put(valueAt(document, [key]), rest, value);
  if (Array.isArray(document)) return document.with(Number(key), below);
  return { ...Object(document), [key]: below };
}
