import { nameOf } from "../../editor/form-values.js";
import { placeWords } from "./edit-page.js";
import type { EditPlace } from "./edit-place.js";
import type { SaveResult, SentForm } from "./edit-save.js";

type Conflict = Extract<SaveResult, { saved?: undefined }>;

/** Both values at each place, for the second writer to choose from. Everything typed is in the form again. */
export function conflictView({ latest, clashes }: Conflict, place: EditPlace, form: SentForm): object {
  const who = latest.author || "Someone";
  const when = `${latest.savedAt.slice(0, 10)} at ${latest.savedAt.slice(11, 16)} UTC`;
  return {
    told: `${who} saved revision ${latest.revision} while you worked on revision ${form.base}`,
    advice:
      clashes.length > 0
        ? `Saved on ${when}${latest.note ? ` (${latest.note})` : ""}. Nothing was overwritten, and nothing that you typed is lost. Choose what to keep; places that only you changed are kept as yours.`
        : "What this page showed was moved or removed. Open the list to find it; what you typed is still in the fields below.",
    href: place.href,
    base: form.base,
    expected: latest.revision,
    author: form.author,
    hidden: Object.entries({ ...form.posted, ...(form.act ? { act: form.act } : {}) })
      .filter(([name]) => !name.startsWith("choice:"))
      .map(([name, value]) => ({ name, value })),
    rows: clashes.map(({ at, ...values }) => ({ ...values, name: nameOf(at), place: placeWords(at, 1) })),
  };
}
