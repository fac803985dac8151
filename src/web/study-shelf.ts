import type { AssumptionSet } from "../assumptions/entry.js";
import type { StudyStore } from "../store/studies.js";
import { checkStudy, type StudyCheck } from "../study/check.js";
import { type ComparedRun, comparedRun } from "../study/compared/compared.js";
import { runStudy, type StudyRun } from "../study/compute.js";
import { readStudyText } from "../study/read.js";
import { type BalanceState, balanceDesk } from "./balance-desk.js";
import { runCache } from "./run-cache.js";
import { type ShelfEntry, type ShelfReading, shelfReading } from "./shelf-reading.js";
import { type ShelfWriting, shelfWriting, type Writer } from "./shelf-writing.js";

/** The examples and the kept studies, and what comes out of them. */
export interface StudyShelf extends ShelfReading, ShelfWriting {
  /** The study computed. @throws InputError where its text cannot be: what is kept may be incomplete */
  readonly run: (entry: Pick<ShelfEntry, "text" | "fileName">) => StudyRun;
  /** The comparison alone, for a study that is held against another. Quicker than a run. @throws InputError */
  readonly compared: (entry: Pick<ShelfEntry, "text" | "fileName">) => ComparedRun;
  /** With which all studies are computed. */
  readonly assumptions: AssumptionSet;
  /** The balance in one line, or what keeps the study from having one. Quicker than a run: no ranges. */
  readonly balance: (entry: Pick<ShelfEntry, "text" | "fileName">) => BalanceState;
  /** What keeps a study from being computed, without computing it. */
  readonly check: (entry: Pick<ShelfEntry, "text" | "fileName">) => StudyCheck;
  /** Checks a study and keeps it as a new one. @throws InputError, with nothing kept; StoreError */
  readonly add: (text: string, fileName: string, writer?: Writer) => ShelfEntry;
}

const uploader: Writer = { author: "", note: "", origin: "upload" };

export function studyShelf(store: StudyStore, assumptions: AssumptionSet, now: () => Date): StudyShelf {
  const runs = runCache((text, fileName) => runStudy(readStudyText(text, fileName), assumptions));
  const comparisons = runCache((text, fileName) => comparedRun(readStudyText(text, fileName), assumptions));
  const reading = shelfReading(store);
  const writing = shelfWriting(store, reading, now);
  return {
    ...reading,
    ...writing,
    run: ({ text, fileName }) => runs(text, fileName),
    compared: ({ text, fileName }) => comparisons(text, fileName),
    assumptions,
    balance: balanceDesk(assumptions),
    check: ({ text, fileName }) => checkStudy(text, fileName, assumptions),
    add: (text, fileName, writer = uploader) => {
      runs(text, fileName);
      return writing.create(text, writer, fileName);
    },
  };
}
