import { loadAssumptions } from "../../src/assumptions/load.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { readStudyFile } from "../../src/study/reading/read.js";
import { type ExampleName, examplePath } from "../study/example.js";

export const assumptions = loadAssumptions(assumptionsFolder);

/** The same object for every test: a test that alters it fails. */
export const exampleDocument = keptFor(
  (name: ExampleName): StudyDocument => readStudyFile(examplePath(name)),
);

/** The same object for every test of a worker: computing it takes most of a second. */
export const exampleRun = keptFor(
  (name: ExampleName): StudyRun => runStudy(exampleDocument(name), assumptions),
);

/** An example read and computed from its file, whatever was computed before. */
export const computedAnew = (name: ExampleName): StudyRun =>
  runStudy(readStudyFile(examplePath(name)), assumptions);

/** What is made of each example once, and frozen. */
function keptFor<Made>(make: (name: ExampleName) => Made): (name: ExampleName) => Made {
  const kept = new Map<ExampleName, Made>();
  return (name) => {
    const known = kept.get(name) ?? frozen(make(name));
    kept.set(name, known);
    return known;
  };
}

/** Records and lists with all that is in them; what a class made stays as it is. */
function frozen<Value>(value: Value): Value {
  const isOpen = typeof value === "object" && value !== null && !Object.isFrozen(value);
  if (!isOpen || !(Array.isArray(value) || Object.getPrototypeOf(value) === Object.prototype)) return value;
  Object.freeze(value);
  for (const each of Object.values(value)) frozen(each);
  return value;
}

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
