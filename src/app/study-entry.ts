import type { StudyCard } from "../store/records.js";
export interface StudyEntry extends ListedStudy {
  readonly text: string;
}

/** A study without its text; examples are active and have one revision. */
export interface ListedStudy extends StudyCard {
  readonly isExample: boolean;
}
