import express, { type Express, type Request, type Response } from "express";
import { type Answering, textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import type { CopiedFrom } from "../../editor/marks/copied-values.js";
import type { TypicalEntries } from "../../editor/typical/typical-text.js";
import type { Problem } from "../../study/reading/problems.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import type { StudyPages } from "../pages/study-pages.js";
import { balanceView, marksOf, standingLine, stepsView } from "../pages/workbench-page.js";
import { readerSignal } from "../reader-gone.js";
import { renderPage } from "../render.js";
import { readForm } from "../sent-form.js";
import { type LiveParts, liveBalance } from "../start/live-balance.js";
import { conflictView } from "./conflict-view.js";
import { allNodes, editPage, editPlace, editView, impliedOf, problemsOf, rowsOf } from "./edit-page.js";
import type { EditPlace } from "./edit-place.js";
import { type SaveResult, type SentForm, saveForm, typedText } from "./edit-save.js";
import { itemsPage } from "./items-page.js";
import { copiedIn } from "./page-marks.js";
import { convertedFields, writtenAnew } from "./saved-fields.js";

/** Larger than any form: a study is at most 2 MB, and letters outside ASCII take three times their room. */
export const largeForm = express.urlencoded({ extended: false, limit: "8mb", parameterLimit: 20_000 });

/** The pages of forms, one for each part and for each structure and option. */
export function addEditing(
  app: Express,
  { studies, answers, few, find }: Pick<StudyPages, "studies" | "find"> & LiveParts,
): void {
  const show = async (request: Request, response: Response) => {
    const entry = find(String(request.params.id));
    const place = placeIn(entry, request);
    const author = authorOf(request);
    const isList = place.part.keys.length === 0 && place.at.length === 1;
    const balance = await answers.ask("balance", textOf(entry));
    response.set("Cache-Control", "no-store");
    response.send(
      isList
        ? renderPage("items", itemsPage(entry, balance, place, author))
        : renderPage(
            "edit",
            editPage(entry, balance, place, {
              author,
              entries: studies.assumptions.entries,
              copied: copiedIn(studies, entry, place),
            }),
          ),
    );
  };
  const save = async (request: Request, response: Response) => {
    const entry = find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const form = readForm(request.body);
    const place = placeIn(studies.revision(entry.id, form.base) ?? entry, request);
    if (request.query.try !== undefined) {
      const study = typedText(studies, entry.id, place, form);
      const how = {
        head: balanceView,
        wantsRange: form.posted.range === "1",
        signal: readerSignal(response),
      };
      response
        .set("Cache-Control", "no-store")
        .json(await liveBalance({ studies, answers, few }, study, how));
      return;
    }
    const unusual = form.act.startsWith("confirm:") ? await unusualIn(answers, entry) : [];
    const result = saveForm({ studies, unusual }, entry.id, place, form);
    rememberAuthor(response, form.author);
    const copied = copiedIn(studies, result.saved ?? result.latest, place);
    const { entries } = studies.assumptions;
    await answer({ answers, entries, copied, request, response, place, form, result });
  };
  for (const path of ["/studies/:id/edit/:part", "/studies/:id/edit/:part/:index"]) {
    app.get(path, show);
    app.post(path, largeForm, save);
  }
}

async function unusualIn(answers: Answering, entry: StudyEntry): Promise<readonly Problem[]> {
  const balance = await answers.ask("balance", textOf(entry));
  return balance.line ? balance.unusual : [];
}

function placeIn(entry: StudyEntry, { params }: Request): EditPlace {
  const { document } = draftOf(entry.text, entry.fileName);
  const index = params.index === undefined ? undefined : String(params.index);
  const place = editPlace(entry.id, String(params.part), index, document);
  if (!place) throw new NotFoundError();
  return place;
}

interface Saved {
  readonly answers: Answering;
  readonly entries: TypicalEntries;
  readonly copied: CopiedFrom | undefined;
  readonly request: Request;
  readonly response: Response;
  readonly place: EditPlace;
  readonly form: SentForm;
  readonly result: SaveResult;
}

async function answer({
  answers,
  entries,
  copied,
  request,
  response,
  place,
  form,
  result,
}: Saved): Promise<void> {
  const wantsJson = request.accepts(["html", "json"]) === "json";
  if (!result.saved) {
    const conflict = conflictView(result, place, form);
    response.status(409);
    if (wantsJson) response.json({ conflict: renderPage("partials/conflict", conflict) });
    else {
      const { latest } = result;
      const balance = await answers.ask("balance", textOf(latest));
      response.send(
        renderPage(
          "edit",
          editPage(latest, balance, place, { author: form.author, conflict, entries, copied }),
        ),
      );
    }
  } else if (wantsJson) response.json(await savedAnswer({ answers, copied }, place, form, result));
  else response.redirect(303, nextAddress(place, form.act));
}

/** After a button the page opens where it did something. */
function nextAddress({ href, at }: EditPlace, act: string): string {
  const [verb, name = ""] = act.split(":");
  if (verb === "open" && name !== "") return name;
  const keys = name.split("/");
  const target = verb === "remove" || verb === "up" || verb === "down" ? keys.slice(0, -1) : keys;
  return act === "" || target.length <= at.length ? href : `${href}#f-${target.join("-")}`;
}

/** What the page's script puts in place after a save. */
async function savedAnswer(
  { answers, copied }: Pick<Saved, "answers" | "copied">,
  place: EditPlace,
  { posted }: SentForm,
  { saved, before }: Extract<SaveResult, { saved: StudyEntry }>,
): Promise<object> {
  const draft = draftOf(saved.text, saved.fileName);
  const balance = await answers.ask("balance", textOf(saved));
  const view = editView(place, draft, problemsOf(draft, balance), { implied: impliedOf(balance), copied });
  const nodes = allNodes(view.nodes);
  return {
    revision: saved.revision,
    standing: standingLine(saved),
    steps: renderPage("partials/steps-back", stepsView(saved, place.part.id) ?? {}),
    balance: renderPage("partials/balance-line", balanceView(balance)),
    summary: renderPage("partials/error-summary", view),
    levels: place.part.id === "levels" ? renderPage("partials/levels-picture", view) : undefined,
    marks: marksOf(balance),
    fields: nodes.map(({ id, errors, needed, implied, confirm }) => ({
      ...{ id, error: errors.join(" "), needed, implied, confirm },
    })),
    rows: rowsOf(view.nodes).map(({ id, label }) => ({ id, title: label })),
    written: writtenAnew(nodes, posted),
    converted: convertedFields(allNodes(editView(place, before, []).nodes), nodes, posted),
  };
}
