import { stringify } from "yaml";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { exampleDocument, put, valueAt } from "../study/example.js";
import { assumptions } from "./runs.js";

export type Edit = readonly [path: string, value: unknown];

/** Sorrel Bend with some of its values replaced and an option added. */
export function editedRun(edits: readonly Edit[], ...addedOptions: readonly object[]): StudyRun {
  const document = exampleDocument();
  for (const [path, value] of edits) put(document, path, value);
  const options = valueAt(document, "options");
  if (!Array.isArray(options)) throw new Error("the example holds no list of options");
  put(document, "options", [...options, ...addedOptions]);
  const text = stringify(document, { aliasDuplicateObjects: false });
  return runStudy(readStudyText(text, "study.yaml"), assumptions);
}

/** The same with the lake's duties alone of its structures, computed in a fraction of the time. */
export const smallRun = (edits: readonly Edit[], ...addedOptions: readonly object[]): StudyRun =>
  editedRun(
    [["structures", [valueAt(exampleDocument(), "structures[reservoir-wide]")]], ...edits],
    ...addedOptions,
  );

/** A winter drawdown 12 ft deeper than Sorrel Bend's own; levels invented. */
export const deeper = {
  id: "deeper-winter",
  name: "Deeper winter drawdown",
  drawdown: [
    { on: "02-01", elevation: "2,088 ft" },
    { on: "06-01", elevation: "2,136 ft" },
    { on: "07-15", elevation: "2,135 ft" },
    { on: "09-15", elevation: "2,126 ft" },
    { on: "12-01", elevation: "2,092 ft" },
  ],
};

/** An option that only follows it. */
export const dryOut = {
  id: "dry-out",
  name: "Deeper winter drawdown once infested",
  schedule: deeper.id,
  yearly: [{ name: "Monitoring", cost: "$9,000/yr" }],
  afterInfestation: { share: "0 %" },
};

export const withSchedule: readonly Edit[] = [
  ["lake.otherSchedules", [deeper]],
  ["lake.storageValue", "$2/acre-ft"],
  ["lake.storageValueOrigin", "invented"],
];

/** The amount that a printed cell holds. */
export const amount = (text: string | undefined): number => {
  const found = /-?[^\d-]*[\d,.]*\d/.exec((text ?? "").replaceAll("−", "-"))?.[0] ?? "";
  return Number(found.replace(/[^\d.-]/g, ""));
};
