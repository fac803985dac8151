import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { Assumption, AssumptionSet } from "../../assumptions/entry.js";
import { applyOverrides } from "../../assumptions/override.js";
import { draftOf } from "../../editor/draft.js";
import { problemText } from "../../editor/form-node.js";
import { type OwnValue, ownValueIndex, ownValues, withOwnValue } from "../../editor/own-value.js";
import { ConflictError } from "../../store/errors.js";
import { allowedCharacters, unseenIn } from "../../study/reading/characters.js";
import { formIn } from "../sent-form.js";

/** A study's own value for an assumption, as its form sends it. */
export interface OwnValueForm extends OwnValue {
  readonly author: string;
  /** The revision that the form showed. */
  readonly base: number;
}

/** What is wrong, beside its field. */
export interface Wrong {
  readonly value: string | undefined;
  readonly reason: string | undefined;
}

const form = z.object({
  value: z.string().trim().max(200, "at most 200 characters").default(""),
  reason: z.string().trim().default(""),
  author: z.string().trim().max(200, "at most 200 characters").default(""),
  base: z.coerce.number().int().min(1),
});

/** @throws InputError for what is no such form */
export const readOwnValueForm = (body: unknown): OwnValueForm => formIn(form, body);

const longestReason = 200;

/** The text with the own value, and what is wrong with it if anything is. */
export function triedText(
  { text, fileName }: Pick<StudyEntry, "text" | "fileName">,
  entry: Assumption,
  own: OwnValue,
  assumptions: AssumptionSet,
): { readonly text: string; readonly wrong: Wrong | undefined } {
  const changed = withOwnValue(text, fileName, entry.id, own);
  const { problems } = applyOverrides(assumptions, [{ id: entry.id, ...own }]);
  const unusable = problems.map(
    ({ allowed }) => `Found ${own.value ? `“${own.value}”` : "nothing"}; allowed: ${allowed}.`,
  );
  const draft = draftOf(changed, fileName);
  const index = ownValueIndex(draft.document, entry.id);
  const contradicting = draft.problems
    .filter(({ at }) => at?.[0] === "overrides" && at[1] === index && at[2] === "value")
    .map(problemText);
  const value = [...unusable, ...contradicting][0];
  const reason = wrongReason(own.reason);
  return { text: changed, wrong: (value ?? reason) ? { value, reason } : undefined };
}

function wrongReason(reason: string): string | undefined {
  if (reason === "") return "A reason is missing. The report prints it beside the value.";
  const unseen = unseenIn(reason);
  if (unseen !== undefined) return `The reason has ${unseen}; allowed: ${allowedCharacters}.`;
  return reason.length > longestReason
    ? `The reason has ${reason.length} characters; allowed: at most ${longestReason}.`
    : undefined;
}

type OwnValueSaved =
  | { readonly saved: StudyEntry }
  /** Someone else changed the same assumption since; nothing was overwritten. */
  | { readonly saved?: undefined; readonly latest: StudyEntry; readonly theirs: OwnValue | undefined };

/**
 * Keeps a change of one assumption. Changes that others made elsewhere meanwhile are kept as well.
 * @param change makes the new text from the latest one
 */
export function saveOwnValue(
  studies: Studies,
  entry: StudyEntry,
  id: string,
  { base, author }: Pick<OwnValueForm, "base" | "author">,
  change: { readonly note: string; readonly apply: (study: StudyEntry) => string },
): OwnValueSaved {
  const before = ownIn(studies.revision(entry.id, base) ?? entry, id);
  const theirs = ownIn(entry, id);
  if (before?.value !== theirs?.value || before?.reason !== theirs?.reason) return { latest: entry, theirs };
  try {
    const writer = { author, note: change.note, origin: "form" } as const;
    return { saved: studies.save(entry.id, entry.revision, change.apply(entry), writer) };
  } catch (error) {
    const latest = studies.find(entry.id);
    if (!(error instanceof ConflictError) || !latest) throw error;
    return saveOwnValue(studies, latest, id, { base, author }, change);
  }
}

const ownIn = ({ text, fileName }: StudyEntry, id: string): OwnValue | undefined =>
  ownValues(draftOf(text, fileName).document).get(id);
