import { type Answering, textOf } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import type { Assumption } from "../../assumptions/entry.js";
import { draftOf } from "../../editor/draft.js";
import { withoutOverride } from "../../editor/override-edits.js";
import { type OwnValue, ownValues } from "../../editor/own-value.js";
import { assumptionRow } from "../../report/document/assumptions-list.js";
import { usualIn } from "../../report/words/usual-and-own.js";
import type { TableView } from "../../report/words/view-types.js";
import { InputError } from "../../study/reading/problems.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { ownShown, unitsOf } from "./assumption-units.js";
import { usedIn } from "./assumptions-page.js";
import { type OwnValueForm, triedText, type Wrong } from "./own-value-form.js";

export interface AssumptionPage {
  readonly studies: Studies;
  readonly answers: Answering;
  readonly study: StudyEntry;
  readonly entry: Assumption;
  /** A value that is tried or could not be kept; absent where the page is opened. */
  readonly typed: OwnValueForm | undefined;
  /** True where nothing is to be kept: a reason may be given later. */
  readonly isTrial?: boolean;
  readonly author: string;
  /** What someone else did with the same assumption meanwhile. */
  readonly conflict?: { readonly theirs: OwnValue | undefined };
}

/** One assumption: where it comes from, the study's own value, and what that does to the answer. */
export async function assumptionPage(page: AssumptionPage): Promise<object> {
  const { studies, answers, study, entry, typed, author, conflict } = page;
  const { id } = entry;
  const own = ownValues(draftOf(study.text, study.fileName).document);
  const balance = await answers.ask("balance", textOf(study));
  const row = assumptionRow(entry, { assumptions: studies.assumptions, used: usedIn(balance), own });
  const units = unitsOf(study, studies);
  const usual = usualIn(entry, units);
  const tried = typed && triedText(study, entry, withReason(typed, page.isTrial), studies.assumptions);
  const kept = own.get(id);
  return workbenchPage(
    { entry: study, balance, part: "assumptions", title: row.name },
    {
      row: { ...row, ...usual },
      ownShown: row.own && ownShown(entry, { value: row.own, reason: "" }, studies.assumptions, units),
      href: `/studies/${study.id}/assumptions/${id}`,
      list: `/studies/${study.id}/assumptions`,
      study: study.id,
      readOnly: study.isExample || mayOnlyRead(),
      base: study.revision,
      author,
      form: {
        value: typed?.value ?? kept?.value ?? "",
        reason: typed?.reason ?? kept?.reason ?? "",
        ...errorsOf(tried?.wrong),
      },
      hasOwn: kept !== undefined,
      conflict: conflict && conflictText(study, conflict.theirs),
      effect: await effectOf({ answers, study, entry }, tried),
      isTried: tried !== undefined && tried.wrong === undefined,
    },
  );
}

const withReason = (typed: OwnValueForm, isTrial = false): OwnValueForm =>
  isTrial && typed.reason === "" ? { ...typed, reason: "tried" } : typed;

const errorsOf = (wrong: Wrong | undefined) => ({
  valueError: wrong?.value ?? "",
  reasonError: wrong?.reason ?? "",
});

function conflictText({ revision, author }: StudyEntry, theirs: OwnValue | undefined): string {
  const did = theirs ? `gave it the value “${theirs.value}” (${theirs.reason})` : "set it to its usual value";
  return `${author || "Someone"} ${did} in revision ${revision}, while you worked. Nothing was overwritten; what you typed is below. Save again to keep yours.`;
}

interface Effect {
  readonly table: TableView | undefined;
  readonly note: string;
}

/** A tried value against the study as it is; else the own value against the usual one. */
async function effectOf(
  { answers, study, entry }: Pick<AssumptionPage, "answers" | "study" | "entry">,
  tried: ReturnType<typeof triedText> | undefined,
): Promise<Effect | undefined> {
  const { text, fileName } = study;
  const isOwn = ownValues(draftOf(text, fileName).document).has(entry.id);
  if (tried?.wrong || (!tried && !isOwn)) return undefined;
  const [before, after] = tried ? [text, tried.text] : [withoutOverride(text, fileName, entry.id), text];
  const names = tried ? (["As kept", "As tried"] as const) : (["Usual value", "Own value"] as const);
  try {
    const table = await answers.ask("effect", { before, text: after, fileName, names });
    return { table, note: tried ? "Nothing was saved." : "" };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const note = tried
      ? "The value can be kept; what it does is shown once the study is complete."
      : "What it does is shown once the study is complete.";
    return { table: undefined, note };
  }
}
