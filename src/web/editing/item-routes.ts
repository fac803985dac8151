import type { Express } from "express";
import { z } from "zod";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { idFor } from "../../editor/new-bearers.js";
import { partOf } from "../../editor/parts.js";
import { edited } from "../../editor/study-text.js";
import { structureKindFields } from "../../editor/table/structure-columns.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { InputError, problemsOf } from "../../study/reading/problems.js";
import { NotFoundError } from "../explain.js";
import { readForm } from "../sent-form.js";
import { largeForm } from "./edit-routes.js";
import { withExtraEdits } from "./extra-edits.js";

const newItem = z.object({
  name: z
    .string()
    .trim()
    .min(1, "a name")
    .max(200, "at most 200 characters")
    .refine(isPrintable, allowedCharacters),
  kind: z.string().optional(),
});

/** New structures and options by their name; their page opens. */
export function addItems(app: Express, studies: Studies, find: (id: string | undefined) => StudyEntry): void {
  app.post("/studies/:id/edit/:part/new", largeForm, (request, response) => {
    const entry = find(String(request.params.id));
    const part = partOf(String(request.params.part));
    if (!part || part.keys.length > 0 || entry.isExample) throw new NotFoundError();
    const form = readForm(request.body);
    const parsed = newItem.safeParse(form.posted);
    if (!parsed.success) throw new InputError("The form", problemsOf(parsed.error.issues, form.posted));
    const { document } = draftOf(entry.text, entry.fileName);
    const present = itemsOf(childOf(document, part.section));
    const item = itemOf(part.section, parsed.data, present);
    const added = edited(entry.text, [{ at: [part.section, present.length], value: item }]);
    const fills = form.act === "typical" && part.id === "structures";
    const means = { entries: studies.assumptions.entries, unusual: [] };
    const text = fills ? withExtraEdits(added, `typical:${present.length}`, means) : added;
    const note = `Added ${parsed.data.name}`;
    // An item at the end of a list takes nothing from another writer: it goes on top of the latest revision.
    studies.save(entry.id, entry.revision, text, { author: form.author, note, origin: "form" });
    response.redirect(303, `/studies/${entry.id}/edit/${part.id}/${present.length}`);
  });
}

function itemOf(
  section: string,
  { name, kind }: z.output<typeof newItem>,
  present: readonly unknown[],
): object {
  const id = idFor(name, section === "structures" ? "structure" : "option", present);
  if (section !== "structures") return { id, name, afterInfestation: { share: "0 %" } };
  const known = kind !== undefined && structureKindFields().has(kind);
  if (!known) throw new InputError("The form", [kindProblem]);
  return { id, kind, name };
}

const kindProblem = {
  path: "kind",
  found: "no known kind",
  allowed: "a kind of the list",
  remedy: "Choose a kind.",
};
