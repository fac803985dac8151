import type { KeptStudy, RevisionCard, StudyCard, StudyState } from "../store/records.js";
import type { StudyStore } from "../store/studies.js";
import { readExamples } from "./examples.js";

/** A study without its text; examples are active and have one revision. */
export interface ShelfCard extends StudyCard {
  readonly isExample: boolean;
}

export interface ShelfEntry extends ShelfCard {
  readonly text: string;
}

/** The examples and the kept studies, for reading. All may throw StoreError. */
export interface ShelfReading {
  /** Active studies and, after them, the examples. */
  readonly list: () => ShelfCard[];
  readonly inState: (state: StudyState) => ShelfCard[];
  /** In any state. */
  readonly find: (id: string) => ShelfEntry | undefined;
  /** The newest first. */
  readonly revisions: (id: string) => RevisionCard[];
  /** A study as it was at a revision. */
  readonly revision: (id: string, revision: number) => ShelfEntry | undefined;
}

export function shelfReading(store: StudyStore): ShelfReading {
  const examples = readExamples();
  const exampleOf = (id: string) => examples.find((example) => example.id === id);
  const find = (id: string): ShelfEntry | undefined => {
    const example = exampleOf(id);
    if (example) return example;
    const kept = store.latest(id);
    return kept && own(kept);
  };
  return {
    list: () => [...store.list("active").map(own), ...examples],
    inState: (state) => store.list(state).map(own),
    find,
    revisions: (id) => {
      const example = exampleOf(id);
      return example ? [example] : store.revisions(id);
    },
    revision: (id, number) => {
      const study = find(id);
      if (!study || study.revision === number) return study;
      const kept = store.revision(id, number);
      return kept && { ...study, ...kept };
    },
  };
}

export function own<Study extends StudyCard | KeptStudy>(
  study: Study,
): Study & { readonly isExample: boolean } {
  return { ...study, isExample: false };
}
