import type { BalanceState } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { type Draft, draftOf } from "../../editor/draft.js";
import { groupFieldsAt } from "../../editor/field-at.js";
import type { NamedField } from "../../editor/fields.js";
import { formOf } from "../../editor/form.js";
import { type FormContext, type FormNode, idOf, problemText } from "../../editor/form-node.js";
import { childOf, shownText } from "../../editor/form-values.js";
import { labelOf, lowered } from "../../editor/labels.js";
import type { CopiedFrom } from "../../editor/marks/copied-values.js";
import { fieldsOfPart, isInPart, partOf, type StudyPart, studyParts } from "../../editor/parts.js";
import type { Place } from "../../editor/study-text.js";
import { typicalIn } from "../../editor/typical/typical-edits.js";
import type { TypicalEntries } from "../../editor/typical/typical-text.js";
import { type LevelsPicture, levelsPicture } from "../../report/rack/levels-picture.js";
import { draftedLevels } from "../../study/reading/drafted-levels.js";
import type { Problem } from "../../study/reading/problems.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { editedParts } from "../pages/workbench-parts.js";
import { exampleDocuments } from "./example-documents.js";
import { copiedNote, fillOf, pageKey } from "./page-marks.js";

/** A page of forms: a part, or one structure or option of a part that is a list. */
export interface EditPlace {
  readonly part: StudyPart;
  readonly at: Place;
  readonly fields: readonly NamedField[];
  /** Address of the page. */
  readonly href: string;
}

/** @returns nothing for what is no page of forms */
export function editPlace(
  studyId: string,
  partId: string,
  index: string | undefined,
  document: unknown,
): EditPlace | undefined {
  const part = partOf(partId);
  if (!part) return undefined;
  const href = `/studies/${studyId}/edit/${partId}`;
  if (index === undefined) return { part, at: [part.section], fields: fieldsOfPart(part), href };
  if (part.keys.length > 0 || !/^\d{1,4}$/.test(index)) return undefined;
  const at = [part.section, Number(index)];
  const fields = groupFieldsAt(at, document);
  const exists = childOf(childOf(document, part.section), Number(index)) !== undefined;
  return fields && exists ? { part, at, fields: listsLast(fields), href: `${href}/${index}` } : undefined;
}

/** What every structure may have comes after what makes it what it is. */
const listsLast = (fields: readonly NamedField[]): NamedField[] => {
  const isLast = ({ key }: NamedField) => key === "fixtures" || key === "pinned";
  return [...fields.filter((field) => !isLast(field)), ...fields.filter(isLast)];
};

/** Problems of a study: those of the balance reach further than those of its text alone, and it knows what is unusual. */
export const problemsOf = (draft: Draft, balance: BalanceState): readonly Problem[] =>
  balance.line ? balance.unusual : balance.problems.length > 0 ? balance.problems : draft.problems;

type Implied = NonNullable<FormContext["implied"]>;

/** What is known of a study's entries once it is complete. */
export const impliedOf = (balance: BalanceState): Implied => (balance.line ? balance.implied : []);

interface EditView {
  readonly nodes: readonly FormNode[];
  readonly summary: readonly { readonly id: string; readonly place: string; readonly text: string }[];
  readonly wrong: number;
  readonly missing: number;
  readonly picture: LevelsPicture | undefined;
}

interface ViewMeans {
  readonly entries?: TypicalEntries;
  readonly implied?: Implied;
  readonly copied?: CopiedFrom | undefined;
  readonly examples?: readonly unknown[];
}

/** The form of a page with what is wrong in it; `base` shows what was typed against another revision. */
export function editView(
  place: EditPlace,
  draft: Draft,
  problems: readonly Problem[],
  { entries, implied = [], copied, examples = [] }: ViewMeans = {},
): EditView {
  const nodes = formOf(place.fields, place.at, {
    ...draft,
    ...{ problems, implied, copied, examples, ...(entries ? { entries } : {}) },
  });
  const own = problems.filter((problem) => isOnPage(place, problem.at));
  const ids = new Set(allNodes(nodes).map(({ id }) => id));
  const summary = own.map((problem) => ({
    id: nearest(problem.at ?? [], ids),
    place: placeWords(problem.at ?? [], place.at.length, titleIn(nodes)),
    text: problemText(problem),
  }));
  const missing = own.filter(({ found }) => found === "nothing").length;
  const wrong = own.filter(({ unusual }) => !unusual).length - missing;
  const levels = place.part.id === "levels" ? draftedLevels(draft) : undefined;
  return {
    nodes,
    summary,
    wrong,
    missing,
    picture: levels && levelsPicture(levels, draft.writing.system),
  };
}

function isOnPage({ part, at }: EditPlace, place: readonly PropertyKey[] | undefined): boolean {
  if (at.length === 1) return isInPart(part, place);
  return place?.[0] === at[0] && place?.[1] === at[1];
}

export const allNodes = (nodes: readonly FormNode[]): FormNode[] =>
  nodes.flatMap((node) => [node, ...allNodes(node.children)]);

/** Rows of the lists of a form. */
export const rowsOf = (nodes: readonly FormNode[]): FormNode[] =>
  allNodes(nodes).flatMap(({ shape, children }) => (shape.list ? children : []));

/** Titles of rows by their place. */
function titleIn(nodes: readonly FormNode[]): (name: string) => string | undefined {
  const titles = new Map(rowsOf(nodes).map(({ name, label }) => [name, label]));
  return (name) => titles.get(name);
}

/** Id of the input of a place, or of the nearest group around it that is on the page. */
function nearest(at: readonly PropertyKey[], ids: ReadonlySet<string>): string {
  for (let length = at.length; length > 0; length -= 1) {
    const id = idOf(at.slice(0, length).map((key) => (typeof key === "number" ? key : String(key))));
    if (ids.has(id)) return id;
  }
  return "form";
}

/**
 * A place below the page's own in words: "Chemistry, calcium".
 * @param rowTitle title of a row by its name; rows without one are counted
 */
export function placeWords(
  at: readonly PropertyKey[],
  skip: number,
  rowTitle: (name: string) => string | undefined = () => undefined,
): string {
  const words = at.slice(skip).map((key, index) => {
    if (typeof key !== "number") return index === 0 ? labelOf(String(key)) : lowered(labelOf(String(key)));
    return (
      rowTitle(
        at
          .slice(0, skip + index + 1)
          .map(String)
          .join("/"),
      ) ?? String(key + 1)
    );
  });
  return words.join(", ") || "This part";
}

interface EditPageOptions {
  readonly author: string;
  readonly conflict?: object | undefined;
  /** From which typical values are read. */
  readonly entries: TypicalEntries;
  readonly copied: CopiedFrom | undefined;
}

/** A page of forms in the workbench. */
export function editPage(
  entry: StudyEntry,
  balance: BalanceState,
  place: EditPlace,
  { author, conflict, entries, copied }: EditPageOptions,
): object {
  const draft = draftOf(entry.text, entry.fileName);
  const view = editView(place, draft, problemsOf(draft, balance), {
    ...{ entries, copied, implied: impliedOf(balance) },
    examples: entry.isExample ? [] : exampleDocuments(draft.writing.system),
  });
  const name = partName(place.part);
  const item = place.at.length > 1 ? itemName(draft.document, place.at) : undefined;
  return workbenchPage(
    { entry, balance, part: place.part.id, title: item ?? name },
    {
      ...view,
      ...{ href: place.href, partId: place.part.id, guide: place.part.guide, author },
      ...{ readOnly: entry.isExample || mayOnlyRead(), revision: entry.revision, study: entry.id },
      copied: copied && copiedNote(copied, view.nodes, pageKey(place, draft.document)),
      fill: fillOf(draft.document, place),
      isFirst: typicalIn(draft.document).length > 0,
      hasAmounts: allNodes(view.nodes).some(({ shape }) => shape.amount),
      ...{ conflict, showsLevels: place.part.id === "levels" },
      list: item === undefined ? undefined : { name, href: place.href.replace(/\/\d+$/, "") },
      kind: item === undefined ? "" : labelOf(shownText(valueIn(draft.document, [...place.at, "kind"]))),
      plans: place.part.id === "structures" ? `/studies/${entry.id}/plans` : undefined,
      next: nextPart(entry, place),
    },
  );
}

export const valueIn = (document: unknown, at: Place) =>
  at.reduce<unknown>((found, key) => childOf(found, key), document);

export const partName = (part: StudyPart) => editedParts.find(({ id }) => id === part.id)?.name ?? part.id;

export const itemName = (document: unknown, at: Place): string =>
  shownText(valueIn(document, [...at, "name"])) ||
  shownText(valueIn(document, [...at, "id"])) ||
  "Without a name";

function nextPart(entry: StudyEntry, place: EditPlace) {
  const after = studyParts[studyParts.indexOf(place.part) + 1];
  if (place.at.length > 1) return { href: place.href.replace(/\/\d+$/, ""), name: partName(place.part) };
  return after
    ? { href: `/studies/${entry.id}/edit/${after.id}`, name: partName(after) }
    : { href: `/studies/${entry.id}`, name: "Results" };
}
