import { readFileSync } from "node:fs";
import { join } from "node:path";
import { loadAssumptions } from "#product/assumptions/load.js";
import { applyOverrides } from "#product/assumptions/override.js";
import { draftOf } from "#product/editor/draft.js";
import { edited } from "#product/editor/study-text.js";
import { assumptionsFolder, examplesFolder } from "#product/report/document/assets.js";
import { assumptionRows } from "#product/report/document/assumptions-list.js";
import { ownTextHtml } from "#product/report/words/own-text.js";
import { isolateRightToLeft } from "#product/report/words/right-to-left.js";
import { readDraft } from "#product/study/reading/judged.js";
import { nameInText, renamedText } from "#product/study/reading/name-in-text.js";
import { describe, pathText, valueAt } from "#product/study/reading/problems.js";
import { largestStudyBytes, parseText, readStudyText } from "#product/study/reading/read.js";
import type { Reader } from "./measure.js";
import { refusing } from "./refusing.js";

/** Longest of the author's own words in a report, and of a search. */
const longestOwnText = 4000;
const longestSearch = 200;

const most = largestStudyBytes;
const place = { at: ["lake", "name"], value: "Other" } as const;

/** Studies as texts, and what is taken out of them. */
const ofText: readonly Reader[] = [
  { name: "a study file", most, read: refusing((text) => readStudyText(text, "the study")) },
  { name: "a draft", most, read: (text) => draftOf(text, "the draft") },
  { name: "the name in a text", most, read: (text) => nameInText(text) },
  { name: "a text renamed", most, read: (text) => renamedText(text, "Other") },
  { name: "a text edited", most, read: refusing((text) => edited(text, [place])) },
  { name: "a value told", most, read: (text) => describe(text) + pathText([text], {}) },
  { name: "the report's own words", most: longestOwnText, read: ownTextHtml },
  { name: "names from right to left", most, read: isolateRightToLeft },
];

export function studyReaders(): readonly Reader[] {
  const assumptions = loadAssumptions(assumptionsFolder);
  const reading = { assumptions, used: undefined, own: new Map() };
  const [id = ""] = assumptions.entries.keys();
  const sorrel = parseText(readFileSync(join(examplesFolder, "sorrel-bend.yaml"), "utf8"), "Sorrel Bend");
  return [
    ...ofText,
    {
      name: "the search of assumptions",
      most: longestSearch,
      read: (text) => assumptionRows(reading, "all", text),
    },
    {
      name: "an own value",
      most,
      read: (text) => applyOverrides(assumptions, [{ id, value: text, reason: "tried" }]),
    },
    {
      name: "every text of a study at once",
      most,
      read: (text) => readDraft(withEveryText(sorrel, text)),
    },
  ];
}

const kindOf = (item: unknown) => valueAt(item, ["kind"]);

/** Every field of the format that the document has once: lists keep their first item, and one of each kind. */
function withEveryText(value: unknown, text: string): unknown {
  if (typeof value === "string") return text;
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value;
    return items
      .filter((item, index) => items.findIndex((each) => kindOf(each) === kindOf(item)) === index)
      .map((item) => withEveryText(item, text));
  }
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, key === "kind" ? item : withEveryText(item, text)]),
  );
}
