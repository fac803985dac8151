import type { StudyText } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { editsOfAction } from "../../editor/actions.js";
import { type Clash, chosenEdits, clashes, isChosen, sameItem } from "../../editor/conflict.js";
import { type Draft, draftOf } from "../../editor/draft.js";
import { editsOf } from "../../editor/form-edits.js";
import { childOf, nameOf, type Posted, placeOf, shownText } from "../../editor/form-values.js";
import { newBearerEdits } from "../../editor/new-bearers.js";
import { type Edit, edited, type Place, rawOf } from "../../editor/study-text.js";
import { triedText } from "../../editor/tried-text.js";
import { typicalEdits } from "../../editor/typical/typical-edits.js";
import { ConflictError } from "../../store/errors.js";
import { NotFoundError } from "../explain.js";
import { itemName, partName, placeWords } from "./edit-page.js";
import type { EditPlace } from "./edit-place.js";
import { type Means, withExtraEdits } from "./extra-edits.js";

/** What a form of a page sends. */
export interface SentForm {
  readonly posted: Posted;
  /** The revision that the form showed. */
  readonly base: number;
  /** The latest revision that its writer has been told of. */
  readonly expected: number;
  readonly author: string;
  /** A button's wish: "add:lake/storageTable". */
  readonly act: string;
}

export type SaveResult =
  /** With the draft that the form showed. */
  | { readonly saved: StudyEntry; readonly before: Draft }
  | { readonly saved?: undefined; readonly latest: StudyEntry; readonly clashes: readonly Clash[] };

interface Saving extends Pick<Means, "unusual"> {
  readonly studies: Studies;
}

/** Saves what a form changes. @throws NotFoundError; StoreError */
export function saveForm(
  { studies, unusual }: Saving,
  id: string,
  place: EditPlace,
  form: SentForm,
): SaveResult {
  const means = { entries: studies.assumptions.entries, unusual };
  const latest = studies.find(id);
  const base = studies.revision(id, form.base);
  if (!latest || !base) throw new NotFoundError();
  const before = draftOf(base.text, base.fileName);
  const edits = editsOfForm(place, form, before);
  const changed = edited(base.text, edits);
  const structural = actionEdits(form, () => rawOf(changed, base.fileName), lastIn(studies, base));
  const wanted = edited(changed, structural);
  const keeping = { means, form, latest, before };
  if (latest.revision === form.base && changed !== base.text && givesPlace(structural)) {
    const first = keep(studies, place, { ...keeping, text: changed, edits });
    if (!first.saved) return first;
    const { revision } = first.saved;
    return saveForm({ studies, unusual }, id, place, { ...form, base: revision, expected: revision });
  }
  if (withExtraEdits(wanted, form.act, means) === base.text) return { saved: latest, before };
  if (latest.revision === form.base || wanted === base.text) {
    const text = latest.revision === form.base ? wanted : latest.text;
    return keep(studies, place, { ...keeping, text, edits: [...edits, ...structural] });
  }
  const theirs = draftOf(latest.text, latest.fileName).document;
  if (!sameItem(place.at, before.document, theirs)) return { latest, clashes: [] };
  const found = clashes([...edits, ...structural], {
    base: before.document,
    theirs,
    mine: rawOf(wanted, base.fileName),
  });
  if (latest.revision !== form.expected || !isChosen(found, form.posted)) return { latest, clashes: found };
  const chosen = chosenEdits(found, form.posted, rawOf(wanted, base.fileName));
  return keep(studies, place, { ...keeping, text: edited(latest.text, chosen), edits: chosen });
}

/** The text as it would be saved from a form, on top of the revision that the form showed. @throws NotFoundError */
export function typedText(studies: Studies, id: string, place: EditPlace, form: SentForm): StudyText {
  const base = studies.revision(id, form.base);
  if (!base) throw new NotFoundError();
  const { text, fileName } = base;
  const before = draftOf(text, fileName);
  const edits = editsOfForm(place, form, before);
  return { text: triedText(before.document, [...edits, ...typicalEdits(before.document, edits)]), fileName };
}

function editsOfForm(
  place: EditPlace,
  { posted }: SentForm,
  { document, writing }: ReturnType<typeof draftOf>,
) {
  const value = place.at.reduce<unknown>((found, key) => childOf(found, key), document);
  return [
    ...editsOf(place.fields, place.at, value, { posted, writing }),
    ...newBearerEdits(posted, document),
  ];
}

/** Other ways of giving a value, chosen in a list, and the button pressed. @param read parses the text: most forms do neither */
function actionEdits({ posted, act }: SentForm, read: () => unknown, aside: (at: Place) => unknown): Edit[] {
  const ways = Object.entries(posted).filter(([name]) => name.startsWith("way:"));
  if (ways.length === 0 && act === "") return [];
  const document = read();
  return [
    ...ways.flatMap(([name, way]) => editsOfAction(`${name}:${way}`, document, aside)),
    ...editsOfAction(act, document),
  ];
}

/** Whether one way of giving a value takes the place of another: what was typed in that is kept first, so that it comes back. */
const givesPlace = (structural: readonly Edit[]): boolean =>
  structural.some((edit) => "remove" in edit && typeof edit.at.at(-1) === "string");

/** Revisions in which a value that was put aside is looked for. */
const mostSought = 100;

/** What stood last at a place of a study, before another way of giving it took its place. */
function lastIn(studies: Studies, base: StudyEntry): (at: Place) => unknown {
  return (at) => {
    const now = rawOf(base.text, base.fileName);
    for (const { revision, isDamaged } of studies.revisions(base.id).slice(0, mostSought)) {
      const found = isDamaged || revision > base.revision ? undefined : studies.revision(base.id, revision);
      if (!found?.text.includes(String(at.at(-1)))) continue;
      const document = rawOf(found.text, found.fileName);
      const value = at.reduce<unknown>((inner, key) => childOf(inner, key), document);
      if (value !== undefined && sameItem(at.slice(0, -1), document, now)) return value;
    }
    return undefined;
  };
}

interface Keeping {
  readonly means: Means;
  readonly form: SentForm;
  readonly text: string;
  readonly edits: readonly Edit[];
  readonly latest: StudyEntry;
  readonly before: Draft;
}

function keep(
  studies: Studies,
  place: EditPlace,
  { means, form, text, edits, latest, before }: Keeping,
): SaveResult {
  try {
    const note =
      edits.length > 0
        ? noteOf(place, edits, draftOf(latest.text, latest.fileName).document)
        : extraNote(place, form.act);
    const { document } = draftOf(latest.text, latest.fileName);
    const whole = withExtraEdits(edited(text, typicalEdits(document, edits)), form.act, means);
    const saved = studies.save(latest.id, latest.revision, whole, {
      author: form.author,
      note,
      origin: "form",
    });
    return { saved, before };
  } catch (error) {
    if (!(error instanceof ConflictError)) throw error;
    return saveForm({ studies, unusual: means.unusual }, latest.id, place, form);
  }
}

const extraNotes: Readonly<Record<string, string>> = {
  typical: "typical values for what was missing",
  confirm: "an unusual entry confirmed",
  ours: "values of the example taken over",
};

const extraNote = (place: EditPlace, act: string): string =>
  `${partName(place.part)}: ${extraNotes[act.split(":")[0] ?? ""] ?? "edited"}`;

const mostPlacesNamed = 3;

/** A row that goes is known by its name. */
function removedName(document: unknown, at: Place): string {
  const item = at.reduce<unknown>((found, key) => childOf(found, key), document);
  const name = shownText(childOf(item, "name")) || shownText(childOf(item, "id"));
  return name === "" ? placeWords(at.slice(1), 0) : `“${name}”`;
}

/** What was changed, for the list of revisions: "Lake and water: chemistry, calcium". */
function noteOf(place: EditPlace, edits: readonly Edit[], document: unknown): string {
  const removed = edits.find(
    (edit) => "remove" in edit && edit.at.length > 1 && typeof edit.at.at(-1) === "number",
  );
  if (removed) return `${partName(place.part)}: removed ${removedName(document, removed.at)}`.slice(0, 300);
  const own = place.at.length > 1;
  const places = new Set(edits.filter((edit) => isChange(edit, document)).map(({ at }) => nameOf(at)));
  const named = [...places].slice(0, mostPlacesNamed).map((name) => {
    const at = placeOf(name);
    const isInside = own && name.startsWith(`${nameOf(place.at)}/`);
    return placeWords(at.slice(isInside ? place.at.length : 1), 0);
  });
  const rest = places.size > mostPlacesNamed ? ` and ${places.size - mostPlacesNamed} more` : "";
  const what = own ? itemName(document, place.at) : partName(place.part);
  return `${what}: ${named.join("; ")}${rest}`.slice(0, 300);
}

/** A choice that stays as it is is sent with the rest. */
function isChange(edit: Edit, document: unknown): boolean {
  if (!("value" in edit)) return true;
  const before = edit.at.reduce<unknown>((found, key) => childOf(found, key), document);
  return JSON.stringify(before) !== JSON.stringify(edit.value);
}
