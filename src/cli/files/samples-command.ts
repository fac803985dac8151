import { basename, dirname } from "node:path";
import { loadAssumptions } from "../../assumptions/load.js";
import { sampleEdits, sampleMapping } from "../../editor/files/sample-edits.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { edited } from "../../editor/study-text.js";
import { assumptionsFolder } from "../../report/document/assets.js";
import { cleanYears } from "../../study/exports/clean-years.js";
import { readSamples } from "../../study/exports/read-samples.js";
import { sampleYearText } from "../../study/exports/sample-years.js";
import { type SampleColumnsMapped, sampleLogSchema } from "../../study/format/export-schema.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { sentence, valueAt } from "../../study/reading/problems.js";
import { UsageError } from "../arguments.js";
import { writeWhole } from "../write-whole.js";
import {
  exportedFile,
  type FileArguments,
  listIn,
  mustBeAnswered,
  mustBeWhole,
  problemIn,
  settingsOf,
  studyTextAt,
  wholeMapping,
  withWords,
} from "./exported-file.js";

/** Counts a file of samples by year: clean years go to the study, and the yearly counts to the options named. */
export function samplesCommand(path: string, asked: FileArguments, print: (text: string) => void): void {
  const { text, document } = studyTextAt(path);
  const name = basename(asked.file);
  const file = exportedFile(asked.file);
  const { under, watching = "", origin, ...columns } = settingsOf(asked.settings);
  mustBeOption(document, under);
  const mapping = mappingOf(document, columns, { name, file });
  const read = readSamples(file, mapping);
  mustBeAnswered(name, read.asked, answers);
  mustBeWhole(name, read.refused, asked.isPartial && read.years.length > 0);
  const clean = cleanYears(read.years, document, loadAssumptions(assumptionsFolder, dirname(path)));
  const { edits, told } = sampleEdits(document, {
    ...{ years: read.years, clean: clean.runs, mapping, fileName: name, origin, under },
    watching: listIn(watching),
  });
  writeWhole(path, edited(text, edits));
  for (const line of [...read.told, ...read.years.map(sampleYearText), ...clean.told, ...told]) print(line);
  for (const each of firstProblems(read.refused)) print(`Left out: ${sentence(problemIn(name, each))}`);
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

/** The mapping that the study has, with what is set now. @throws InputError */
function mappingOf(
  document: unknown,
  { kinds, results, ...columns }: Record<string, string>,
  of: { readonly name: string; readonly file: string },
): SampleColumnsMapped {
  const before = sampleMapping(document);
  const given = { ...before, ...columns, ...withWords(before, { kinds, results }) };
  const wanted = "columns mapped to date and result, and kind and place if there are any";
  return wholeMapping(sampleLogSchema, given, { ...of, wanted, example: answers.columns });
}
