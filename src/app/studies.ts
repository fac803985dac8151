import type { AssumptionSet } from "../assumptions/entry.js";
import type { StudyStore } from "../store/studies.js";
import { checkStudy, type StudyCheck } from "../study/checks/check.js";
import type { StudyDocument } from "../study/format/schema.js";
import { readStudyText } from "../study/reading/read.js";
import { runCache } from "./answers/run-cache.js";
import type { StudyEntry } from "./study-entry.js";
import { type StudyReading, studyReading } from "./study-reading.js";
import { type StudyWriting, studyWriting } from "./study-writing.js";

/** The examples and the kept studies. What comes out of them is asked of the workers: see answers/. */
export interface Studies extends StudyReading, StudyWriting {
  /** The study as it is read. @throws InputError where it cannot be: what is kept may be incomplete */
  readonly document: (entry: Pick<StudyEntry, "text" | "fileName">) => StudyDocument;
  /** With which all studies are computed. */
  readonly assumptions: AssumptionSet;
  /** What keeps a study from being computed, without computing it. */
  readonly check: (entry: Pick<StudyEntry, "text" | "fileName">) => StudyCheck;
}

/** Studies that are kept as they are read. */
const mostDocuments = 8;

/** @param assumptions read once they are asked for */
export function studiesOf(store: StudyStore, assumptions: () => AssumptionSet, now: () => Date): Studies {
  const document = runCache(mostDocuments, ({ text, fileName }) => readStudyText(text, fileName));
  const reading = studyReading(store);
  const writing = studyWriting(store, reading, now);
  return {
    ...reading,
    ...writing,
    document,
    get assumptions() {
      return assumptions();
    },
    check: ({ text, fileName }) => checkStudy(text, fileName, assumptions()),
  };
}
