import type { KeptStudy, RevisionCard, StudyCard, StudyState } from "../store/records.js";
import type { StudyStore } from "../store/studies.js";
import { recordAtHand, recordsNamed, takeRecord } from "../study/records/at-hand.js";
import { readExamples } from "./examples.js";
import type { ListedStudy, StudyEntry } from "./study-entry.js";

/** The examples and the kept studies, for reading. All may throw StoreError. */
export interface StudyReading {
  /** Active studies and, after them, the examples. */
  readonly list: () => ListedStudy[];
  readonly inState: (state: StudyState) => ListedStudy[];
  /** In any state, without its text, which may be damaged. */
  readonly card: (id: string) => ListedStudy | undefined;
  /** In any state. @throws DamagedRevisionError */
  readonly find: (id: string) => StudyEntry | undefined;
  /** The newest first. */
  readonly revisions: (id: string) => RevisionCard[];
  /** Names that were given to revisions of a study. */
  readonly versionNames: (id: string) => ReadonlyMap<number, string>;
  /** A study as it was at a revision, whatever became of later ones. @throws DamagedRevisionError */
  readonly revision: (id: string, revision: number) => StudyEntry | undefined;
  /** Puts the records that a text names at hand, so that it can be read; what is found of a study's brings its own. */
  readonly bringRecords: (text: string) => void;
}

export function studyReading(store: StudyStore): StudyReading {
  const examples = readExamples();
  const exampleOf = (id: string) => examples.find((example) => example.id === id);
  const bringRecords = (text: string) => {
    for (const digest of recordsNamed(text)) {
      const record = recordAtHand(digest) ?? store.keptRecord(digest);
      if (record !== undefined) takeRecord(record);
    }
  };
  const brought = (study: KeptStudy): StudyEntry => {
    bringRecords(study.text);
    return own(study);
  };
  const find = (id: string): StudyEntry | undefined => {
    const example = exampleOf(id);
    if (example) return example;
    const kept = store.latest(id);
    return kept && brought(kept);
  };
  const card = (id: string): ListedStudy | undefined => {
    const kept = exampleOf(id) ? undefined : store.card(id);
    return exampleOf(id) ?? (kept && own(kept));
  };
  return {
    card,
    list: () => [...store.list("active").map(own), ...examples],
    inState: (state) => store.list(state).map(own),
    find,
    revisions: (id) => {
      const example = exampleOf(id);
      return example ? [example] : store.revisions(id);
    },
    versionNames: (id) => (exampleOf(id) ? new Map() : store.versionNames(id)),
    revision: (id, number) => {
      const example = exampleOf(id);
      if (example) return example.revision === number ? example : undefined;
      const study = store.card(id);
      const kept = store.revision(id, number);
      return study && kept && brought({ ...study, ...kept });
    },
    bringRecords,
  };
}

export function own<Study extends StudyCard | KeptStudy>(
  study: Study,
): Study & { readonly isExample: boolean } {
  return { ...study, isExample: false };
}
