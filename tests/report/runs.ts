import { join } from "node:path";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { assumptionsFolder, examplesFolder } from "../../src/report/document/assets.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { readStudyFile } from "../../src/study/reading/read.js";

export const assumptions = loadAssumptions(assumptionsFolder);

export const exampleDocument = (name: "sorrel-bend" | "ninemoss"): StudyDocument =>
  readStudyFile(join(examplesFolder, `${name}.yaml`));

export const exampleRun = (name: "sorrel-bend" | "ninemoss"): StudyRun =>
  runStudy(exampleDocument(name), assumptions);

type Entered<Kind> = Extract<StudyDocument["structures"][number], { kind: Kind }>;

/** A document with one of its structures alone, altered. */
export function alone<Kind extends "intake" | "hydropower">(
  document: StudyDocument,
  id: string,
  kind: Kind,
  alter: (structure: Entered<Kind>) => Entered<Kind>,
): StudyDocument {
  const found = document.structures.find(
    (each): each is Entered<Kind> => each.id === id && each.kind === kind,
  );
  if (!found) throw new Error(`no ${kind} ${id}`);
  return { ...document, structures: [alter(found)] };
}
