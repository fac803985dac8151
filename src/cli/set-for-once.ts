import type { AssumptionSet } from "../assumptions/entry.js";
import { effectTable } from "../report/compared/effect-view.js";
import { comparedRun } from "../study/compared/compared.js";
import { resultDifferences } from "../study/compared/result-differences.js";
import type { StudyDocument } from "../study/format/schema.js";
import { InputError } from "../study/reading/problems.js";
import { type ParsedStudy, studyOf } from "../study/reading/read.js";
import { recordReaders } from "../study/reading/record-readers.js";
import { type Setting, unknownSettings, withSettings } from "../study/swept/settings.js";
import { tableText } from "./table-text.js";

/** A study with what is set for this once. @throws InputError that names what cannot be set */
export function studyWith(
  parsed: ParsedStudy,
  settings: readonly Setting[],
  assumptions: AssumptionSet,
): StudyDocument {
  const unknown = unknownSettings(parsed, settings, assumptions);
  if (unknown.length > 0) throw new InputError(parsed.name, unknown);
  return withSettings(parsed, settings, assumptions, recordReaders());
}

/** What was set, and what it does at central values. */
export function effectText(
  parsed: ParsedStudy,
  document: StudyDocument,
  { settings, assumptions }: { settings: readonly Setting[]; assumptions: AssumptionSet },
): string {
  const before = comparedRun(studyOf(parsed), assumptions);
  const after = comparedRun(document, assumptions);
  const differences = resultDifferences(before.comparison, after.comparison);
  const { caption, ...table } = effectTable(after, differences, ["As filed", "As set"]);
  return [
    `\nSet for this run only: ${settings.map(({ id, value }) => `${id} = ${value}`).join("; ")}. The file is unchanged.`,
    "",
    tableText({ ...table, caption: `${caption}, at central values` }),
  ].join("\n");
}
