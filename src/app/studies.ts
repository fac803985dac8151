import type { AssumptionSet } from "../assumptions/entry.js";
import type { StudyStore } from "../store/studies.js";
import { checkStudy, type StudyCheck } from "../study/checks/check.js";
import type { StudyDocument } from "../study/format/schema.js";
import { readStudyText } from "../study/reading/read.js";
import { runCache } from "./answers/run-cache.js";
import type { ShelfEntry } from "./study-entry.js";
import { type ShelfReading, shelfReading } from "./study-reading.js";
import { type ShelfWriting, shelfWriting } from "./study-writing.js";

/** The examples and the kept studies. What comes out of them is asked of the workers: see answers/. */
export interface StudyShelf extends ShelfReading, ShelfWriting {
  /** The study as it is read. @throws InputError where it cannot be: what is kept may be incomplete */
  readonly document: (entry: Pick<ShelfEntry, "text" | "fileName">) => StudyDocument;
  /** With which all studies are computed. */
  readonly assumptions: AssumptionSet;
  /** What keeps a study from being computed, without computing it. */
  readonly check: (entry: Pick<ShelfEntry, "text" | "fileName">) => StudyCheck;
}

/** Studies that are kept as they are read. */
const mostDocuments = 8;

export function studyShelf(store: StudyStore, assumptions: AssumptionSet, now: () => Date): StudyShelf {
  const document = runCache(mostDocuments, ({ text, fileName }) => readStudyText(text, fileName));
  const reading = shelfReading(store);
  const writing = shelfWriting(store, reading, now);
  return {
    ...reading,
    ...writing,
    document,
    assumptions,
    check: ({ text, fileName }) => checkStudy(text, fileName, assumptions),
  };
}
