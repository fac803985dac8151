import { dirname } from "node:path";
import { noticedIn } from "../app/answers/noticed.js";
import type { AssumptionSet } from "../assumptions/entry.js";
import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { studyNotes } from "../study/checks/study-notes.js";
import { comparedRun } from "../study/compared/compared.js";
import { type StudyDocument, studyJsonSchema } from "../study/format/schema.js";
import { readStudyFile } from "../study/reading/read.js";

type Print = (text: string) => void;

export function check(path: string, print: Print): void {
  const document = readStudyFile(path);
  const run = comparedRun(document, loadAssumptions(assumptionsFolder, dirname(path)));
  const { structures, options, study } = document;
  print(
    `${study.name}: complete. ${counted(structures.length, "structure")}, ${counted(options.length, "option")}.`,
  );
  for (const { path: place, found, allowed, remedy, unusual } of noticedIn(run).unusual)
    print(`${place}: ${found}${unusual ? `; usually ${allowed}` : ""}. ${remedy}`);
}

/** What an author should know of a study that is in order. */
export function printNotes(document: StudyDocument, set: AssumptionSet, print: Print): void {
  for (const { path, found, remedy } of studyNotes(document, set)) print(`${path}: ${found}. ${remedy}`);
}

export function schema(print: Print): void {
  print(JSON.stringify(studyJsonSchema(), undefined, 2));
}
