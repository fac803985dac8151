import { UnknownStudyError } from "../store/errors.js";
import type { RevisionOrigin, StudyState } from "../store/records.js";
import type { StudyStore } from "../store/studies.js";
import { requirePrintable } from "../study/reading/character-problems.js";
import { forXml } from "../study/reading/characters.js";
import { nameInText, renamedText } from "../study/reading/name-in-text.js";
import { recordText, takeRecord } from "../study/records/at-hand.js";
import type { StudyEntry } from "./study-entry.js";
import { fileNameFor, idFor } from "./study-names.js";
import { own, type StudyReading } from "./study-reading.js";
import { redoneNote, stepsFrom, undoneNote } from "./undo.js";
import { authorFor } from "./visitor.js";

/** Who changes a study, and how. */
export interface Writer {
  /** As typed. */
  readonly author: string;
  readonly note: string;
  readonly origin: RevisionOrigin;
}

/** Keeping studies, complete or not. All may throw StoreError. */
export interface StudyWriting {
  /** Keeps any text as a new study. */
  readonly create: (text: string, writer: Writer, fileName?: string) => StudyEntry;
  /**
   * Keeps any text as the next revision of a study.
   * @param expected the revision that the writer had before him
   * @throws ConflictError, DeletedStudyError, UnknownStudyError
   */
  readonly save: (id: string, expected: number, text: string, writer: Writer) => StudyEntry;
  /** An earlier revision's text as the next revision. @throws as save does */
  readonly restore: (id: string, revision: number, expected: number, author: string) => StudyEntry;
  /** The text before the last edit, or after one that was undone, as the next revision; the study as it is where there is none. */
  readonly step: (id: string, way: "undo" | "redo", expected: number, author: string) => StudyEntry;
  /** Gives a revision a name; an empty one takes it away. @throws UnknownStudyError */
  readonly nameVersion: (id: string, revision: number, name: string) => void;
  /** A new study from any study or example. @throws UnknownStudyError */
  readonly copy: (id: string, author: string, revision?: number) => StudyEntry;
  /** Keeps a record beside the studies. @returns the digest by which a study names it */
  readonly keepRecord: (text: string) => string;
  /** @throws UnknownStudyError */
  readonly setState: (id: string, state: StudyState) => StudyEntry;
}

export function studyWriting(
  store: StudyStore,
  { card, find, revision, revisions }: StudyReading,
  now: () => Date,
): StudyWriting {
  const mustFind = (id: string, number?: number): StudyEntry => {
    const found = number === undefined ? find(id) : revision(id, number);
    if (found) return found;
    throw unknown(id, number);
  };
  const create: StudyWriting["create"] = (text, writer, fileName) => {
    requirePrintable("The study", { "the name of the file": fileName });
    const name = nameInText(text) ?? unnamed;
    const id = idFor(name);
    const savedAt = now().toISOString();
    const revisionFields = { ...signed(writer), id, name, savedAt, text };
    return own(store.create({ ...revisionFields, fileName: fileName ?? fileNameFor(id) }));
  };
  const save: StudyWriting["save"] = (id, expected, text, writer) => {
    const before = card(id);
    if (!before) throw unknown(id);
    const { fileName } = before;
    const name = nameInText(text) ?? unnamed;
    const revisionFields = { ...signed(writer), id, expected, name, savedAt: now().toISOString() };
    return own(store.save({ ...revisionFields, text, fileName }));
  };
  return {
    create,
    save,
    restore: (id, number, expected, author) => {
      const { text } = mustFind(id, number);
      return save(id, expected, text, { author, note: `Revision ${number} again`, origin: "restore" });
    },
    step: (id, way, expected, author) => {
      const target = stepsFrom(revisions(id))[way];
      if (target === undefined) return mustFind(id);
      const note = way === "undo" ? undoneNote(target) : redoneNote(target);
      return save(id, expected, mustFind(id, target).text, { author, note, origin: "restore" });
    },
    nameVersion: (id, number, name) => {
      mustFind(id, number);
      requirePrintable("The name", { name });
      store.nameVersion(id, number, name);
    },
    copy: (id, author, number) => {
      const from = mustFind(id, number);
      const note = `Copy of ${from.name}, revision ${from.revision}`;
      return create(renamedText(from.text, `${from.name} (copy)`), { author, note, origin: "copy" });
    },
    keepRecord: (text) => {
      const digest = takeRecord(text);
      store.keepRecord(digest, recordText(text));
      return digest;
    },
    setState: (id, state) => own(store.setState(id, state, now().toISOString())),
  };
}

const unknown = (id: string, number?: number) =>
  new UnknownStudyError(number === undefined ? `No study "${id}".` : `No revision ${number} of "${id}".`);

/** Notes may hold names out of the study itself, which is kept whatever is in it. */
function signed(writer: Writer): Writer {
  const author = authorFor(writer.author);
  requirePrintable("The change", { author });
  return { ...writer, author, note: forXml(writer.note) };
}

/** What a study is called whose text gives no name yet. */
const unnamed = "Study without a name";
