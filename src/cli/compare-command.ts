import { dirname } from "node:path";
import type { AssumptionSet } from "../assumptions/entry.js";
import { loadAssumptions } from "../assumptions/load.js";
import { effectTable } from "../report/compared/effect-view.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { resultsJson } from "../report/results/results.js";
import { comparedRun } from "../study/compared/compared.js";
import { resultDifferences } from "../study/compared/result-differences.js";
import type { StudyDocument } from "../study/format/schema.js";
import { InputError } from "../study/reading/problems.js";
import { type ParsedStudy, parsedStudyFile, studyOf } from "../study/reading/read.js";
import { recordReaders } from "../study/reading/record-readers.js";
import { type Setting, unknownSettings, withSettings } from "../study/swept/settings.js";
import { comparisonText } from "./comparison-text.js";
import { runWithFutures, runWithOdds } from "./odds-command.js";
import { tableText } from "./table-text.js";

interface CompareArguments {
  /** Set for this once. */
  readonly settings: readonly Setting[];
  readonly asJson: boolean;
}

/** Prints the comparison, on average over all that is uncertain and at central values. */
export async function compareCommand(
  path: string,
  { settings, asJson }: CompareArguments,
  print: (text: string) => void,
): Promise<void> {
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const parsed = parsedStudyFile(path);
  const document = settings.length === 0 ? studyOf(parsed) : studyWith(parsed, settings, assumptions);
  if (asJson) {
    const { run, odds } = await runWithOdds(document, assumptions);
    print(JSON.stringify(resultsJson(run, odds), undefined, 2));
    return;
  }
  const { run, odds } = await runWithFutures(document, assumptions);
  print(comparisonText(run, odds));
  if (settings.length > 0) print(effectText(parsed, document, { settings, assumptions }));
}

function studyWith(
  parsed: ParsedStudy,
  settings: readonly Setting[],
  assumptions: AssumptionSet,
): StudyDocument {
  const unknown = unknownSettings(parsed, settings, assumptions);
  if (unknown.length > 0) throw new InputError(parsed.name, unknown);
  return withSettings(parsed, settings, assumptions, recordReaders());
}

/** What was set, and what it does at central values. */
function effectText(
  parsed: ParsedStudy,
  document: StudyDocument,
  { settings, assumptions }: { settings: readonly Setting[]; assumptions: AssumptionSet },
): string {
  const before = comparedRun(studyOf(parsed), assumptions);
  const after = comparedRun(document, assumptions);
  const differences = resultDifferences(before.comparison, after.comparison);
  const { caption, ...table } = effectTable(after, differences, ["As filed", "As set"]);
  return [
    `\nSet for this once: ${settings.map(({ id, value }) => `${id} = ${value}`).join("; ")}. The file is as it was.`,
    "",
    tableText({ ...table, caption: `${caption}, at central values` }),
  ].join("\n");
}
