import { existsSync, readFileSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { type Studies, studiesOf } from "../app/studies.js";
import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { once } from "../model/computed-once.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { backUp, type Contents } from "../store/backup.js";
import { databaseFile, storeConnection } from "../store/connection.js";
import { dataFolder } from "../store/data-folder.js";
import { UnknownStudyError } from "../store/errors.js";
import { tightenFolderOf } from "../store/private-files.js";
import { restore } from "../store/restore.js";
import { type StudyStore, studyStore } from "../store/studies.js";
import { InputError } from "../study/reading/problems.js";
import { decodeStudy } from "../study/reading/study-bytes.js";
import { recordsFor } from "../study/records/at-hand.js";
import { keepBeside, recordsBeside } from "../study/records/record-folder.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

/** Copies all that is kept to one file, also while the server runs. */
export async function backupCommand(target: string, print: Print): Promise<void> {
  const file = databaseFile(dataFolder());
  mustExist(file, "RAMP_AND_RACK_DATA", "Set it to the folder in which the studies are kept.");
  mustExist(dirname(resolve(target)), "FILE", "Create the folder first.");
  if (existsSync(target)) {
    throw refusal(
      "FILE",
      `"${target}", which exists`,
      "a new file",
      "Name another file, or move that one away.",
    );
  }
  tightenFolderOf(file);
  const contents = await backUp(file, target);
  print(`Backed up ${contentsText(contents)} to ${target} and checked the copy.`);
  printDamaged(contents, print);
}

/** Puts a backup in place of all that is kept, also while the server runs. */
export async function restoreCommand(backup: string, print: Print): Promise<void> {
  const file = databaseFile(dataFolder());
  mustExist(backup, "FILE", "Name a file that the backup command wrote.");
  if (resolve(backup) === resolve(file)) {
    throw refusal("FILE", "the database itself", "a backup of it", "Name another file.");
  }
  const { before, ...contents } = await restore(backup, file, new Date());
  print(`Restored ${contentsText(contents)} from ${backup}.`);
  printDamaged(contents, print);
  if (before !== undefined) print(`What was kept until now is in ${before}`);
}

/** Keeps a study file as a new study, to the byte, complete or not. */
export function importCommand(path: string, author: string, print: Print): void {
  mustExist(path, "FILE", "Check the path.");
  const text = decodeStudy(readFileSync(path), path);
  const records = recordsBeside(dirname(path), text);
  withStudies((studies) => {
    for (const record of records) studies.keepRecord(record);
    const entry = studies.create(text, { author, note: "", origin: "import" }, path.split(/[\\/]/).at(-1));
    print(`Kept as ${entry.id}.`);
    if (studies.check(entry).problems.length > 0) {
      print("It is not complete yet: the check command lists what is missing or wrong.");
    }
  });
}

/** Writes a kept study's file as it was kept. */
export function exportCommand(
  id: string,
  { out, revision }: { readonly out: string; readonly revision: number | undefined },
  print: Print,
): void {
  withStudies((studies) => {
    const entry = revision === undefined ? studies.find(id) : studies.revision(id, revision);
    if (!entry) throw unknown(id, studies);
    writeWhole(out, entry.text);
    for (const record of recordsFor([entry.text])) keepBeside(dirname(out), record);
    print(`Wrote revision ${entry.revision} of ${entry.name} to ${out}`);
  });
}

/** Every study with its id. */
export function listCommand(print: Print): void {
  withStudies((studies) => {
    for (const study of everyStudy(studies)) {
      const state = study.isExample ? "example" : study.state;
      const damaged = study.isDamaged ? "  damaged" : "";
      print(`${study.id}  revision ${study.revision}  ${state}${damaged}  ${study.name}`);
    }
  });
}

/** Removes a deleted study and all its revisions, which nothing but a backup brings back. */
export function removeCommand(id: string, isMeant: boolean, print: Print): void {
  if (!isMeant) {
    throw refusal(
      "remove",
      id,
      "an id and --permanently",
      "Add --permanently; after that no revision can be recovered.",
    );
  }
  withStudies((studies, store) => {
    try {
      store.remove(id);
    } catch (error) {
      if (error instanceof UnknownStudyError) throw unknownDeleted(id, studies);
      throw error;
    }
    print(`Removed ${id} and all its revisions.`);
  });
}

function withStudies(work: (studies: Studies, store: StudyStore) => void): void {
  const connection = storeConnection(dataFolder());
  try {
    const store = studyStore(connection);
    work(
      studiesOf(
        store,
        once(() => loadAssumptions(assumptionsFolder)),
        () => new Date(),
      ),
      store,
    );
  } finally {
    connection.close();
  }
}

const everyStudy = (studies: Studies) => [
  ...studies.list(),
  ...studies.inState("archived"),
  ...studies.inState("deleted"),
];

function unknown(id: string, studies: Studies): InputError {
  const ids = everyStudy(studies).map((study) => study.id);
  return refusal("STUDY-ID", `"${id}"`, ids.join(", "), "The list command shows ids and revisions.");
}

function unknownDeleted(id: string, studies: Studies): InputError {
  const ids = studies.inState("deleted").map((study) => study.id);
  const allowed = ids.length > 0 ? ids.join(", ") : "none: no study is deleted";
  return refusal("STUDY-ID", `"${id}"`, allowed, "Delete the study in the browser first.");
}

function printDamaged({ damaged: { revisions, issues } }: Contents, print: Print): void {
  const all = [
    ...revisions.map(({ id, revision }) => `revision ${revision} of ${id}`),
    ...issues.map(({ studyId, number }) => `issued report ${number} of ${studyId}`),
  ];
  if (all.length === 0) return;
  print(`Damaged (does not match the digest kept with it): ${all.join(", ")}.`);
  print(
    "It was copied as it is and is reported wherever it is read. An earlier backup may have it undamaged.",
  );
}

const contentsText = ({ studies, revisions }: Contents) =>
  `${counted(studies, "study", "studies")} with ${counted(revisions, "revision")}`;

function mustExist(path: string, what: string, remedy: string): void {
  if (!existsSync(path)) throw refusal(what, `no "${path}"`, "an existing file", remedy);
}

const refusal = (path: string, found: string, allowed: string, remedy: string) =>
  new InputError("the command", [{ path, found, allowed, remedy }]);
