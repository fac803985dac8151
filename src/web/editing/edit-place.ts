import type { NamedField } from "../../editor/fields.js";
import type { StudyPart } from "../../editor/parts.js";
import type { Place } from "../../editor/study-text.js";

/** A page of forms: a part, or one structure or option of a part that is a list. */
export interface EditPlace {
  readonly part: StudyPart;
  readonly at: Place;
  readonly fields: readonly NamedField[];
  /** Address of the page. */
  readonly href: string;
}
