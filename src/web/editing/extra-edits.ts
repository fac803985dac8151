import { confirmEdits, takeOverEdits } from "../../editor/marks/confirmed-edits.js";
import { type Edit, edited, rawOf } from "../../editor/study-text.js";
import { fillEdits } from "../../editor/typical/fill-typical.js";
import type { Problem } from "../../study/reading/problems.js";
import type { TypicalValues } from "../../study/short/filling.js";

/** What buttons that reach beyond their form's fields need to know. */
export interface Means {
  readonly entries: TypicalValues;
  /** What is unusual of the study that the form showed. */
  readonly unusual: readonly Problem[];
}

/** "typical:3" fills a structure up, "confirm:structures/3/conduit/diameter" confirms, "ours:lake" takes a page over. */
export function withExtraEdits(text: string, act: string, { entries, unusual }: Means): string {
  const [verb = "", name = ""] = act.split(":");
  const document = () => rawOf(text, "the study");
  const edits: Record<string, () => Edit[]> = {
    typical: () => (/^\d{1,4}$/.test(name) ? fillEdits(document(), Number(name), entries) : []),
    confirm: () => confirmEdits(document(), name, unusual),
    ours: () => takeOverEdits(document(), name),
  };
  const found = Object.hasOwn(edits, verb) ? edits[verb]?.() : [];
  return edited(text, found ?? []);
}
