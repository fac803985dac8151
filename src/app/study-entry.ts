import type { StudyCard } from "../store/records.js";
export interface ShelfEntry extends ShelfCard {
  readonly text: string;
}

/** A study without its text; examples are active and have one revision. */
export interface ShelfCard extends StudyCard {
  readonly isExample: boolean;
}
