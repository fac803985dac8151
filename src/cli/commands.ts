import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { resultsJson } from "../report/results/results.js";
import { studyNotes } from "../study/checks/study-notes.js";
import { type StudyDocument, studyJsonSchema } from "../study/format/schema.js";
import { prepareStudy } from "../study/prepare/prepared.js";
import { readStudyFile } from "../study/reading/read.js";
import { comparisonText } from "./comparison-text.js";
import { runWithFutures, runWithOdds } from "./odds-command.js";

type Print = (text: string) => void;

export function check(path: string, print: Print): void {
  const document = readStudyFile(path);
  prepareStudy(document, loadAssumptions(assumptionsFolder));
  const { structures, options, study } = document;
  print(
    `${study.name}: complete. ${counted(structures.length, "structure")}, ${counted(options.length, "option")}.`,
  );
  printNotes(document, print);
}

/** What an author should know of a study that is in order. */
export function printNotes(document: StudyDocument, print: Print): void {
  for (const { path, found, remedy } of studyNotes(document)) print(`${path}: ${found}. ${remedy}`);
}

/** Prints the comparison, on average over all that is uncertain and at central values. */
export async function compareCommand(path: string, asJson: boolean, print: Print): Promise<void> {
  const assumptions = loadAssumptions(assumptionsFolder);
  const document = readStudyFile(path);
  if (asJson) {
    const { run, odds } = await runWithOdds(document, assumptions);
    print(JSON.stringify(resultsJson(run, odds), undefined, 2));
  } else {
    const { run, odds } = await runWithFutures(document, assumptions);
    print(comparisonText(run, odds));
  }
}

export function schema(print: Print): void {
  print(JSON.stringify(studyJsonSchema(), undefined, 2));
}
