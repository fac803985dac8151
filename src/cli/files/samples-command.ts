import { dirname } from "node:path";
import { loadAssumptions } from "../../assumptions/load.js";
import { sampleEdits, sampleMapping } from "../../editor/files/sample-edits.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { assumptionsFolder } from "../../report/document/assets.js";
import { typedList } from "../../study/exports/export-numbers.js";
import { sampleYearText } from "../../study/exports/sample-years.js";
import { sampleLogs } from "../../study/exports/tried-samples.js";
import { valueAt } from "../../study/reading/problems.js";
import { UsageError } from "../arguments.js";
import { type FileArguments, settingsOf, studyTextAt } from "./exported-file.js";
import { readInto } from "./read-into.js";

/** Counts a file of samples by year: clean years go to the study, and the yearly counts to the options named. */
export function samplesCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const study = studyTextAt(path);
  const { document } = study;
  const { under, watching = "", ...settings } = settingsOf(asked.settings);
  mustBeOption(document, under);
  const kind = sampleLogs(loadAssumptions(assumptionsFolder, dirname(path)));
  const told = readInto(
    study,
    { ...asked, settings },
    {
      ...{ kind, mapped: sampleMapping(document), words: ["kinds", "results"], answers },
      wanted: "columns mapped to date and result, and kind and place if there are any",
      changes: (found, said) => ({
        ...sampleEdits(document, { ...found, ...said, under, watching: typedList(watching) }),
        shown: found.years.map(sampleYearText),
      }),
    },
  );
  for (const line of told) print(line);
}

/** @throws UsageError for an option that the study has not */
function mustBeOption(document: unknown, under: string | undefined): void {
  const ids = itemsOf(childOf(document, "options")).map((each) => String(valueAt(each, ["id"])));
  if (under === undefined || ids.includes(under)) return;
  throw new UsageError(`under is "${under}"; allowed: the id of an option: ${ids.join(", ")}.`);
}

const answers = {
  columns: "--set date=NAME --set result=NAME",
  dates: "--set dates=month-first or --set dates=day-first",
  kinds: '--set all=planktonTows or --set kind=NAME --set "kinds=WORD=planktonTows; WORD=ednaSamples"',
  results: '--set "results=WORD=none; WORD=mussels; WORD=unconfirmed"',
};
