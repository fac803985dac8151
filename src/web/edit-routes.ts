import express, { type Express, type Request, type Response } from "express";
import { draftOf } from "../editor/draft.js";
import { authorOf, rememberAuthor } from "./author.js";
import { conflictView } from "./conflict-view.js";
import { allNodes, type EditPlace, editPage, editPlace, editView, problemsOf } from "./edit-page.js";
import { type SaveResult, type SentForm, saveForm } from "./edit-save.js";
import { NotFoundError } from "./explain.js";
import { itemsPage } from "./items-page.js";
import { renderPage } from "./render.js";
import { readForm } from "./sent-form.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";
import { balanceView, marksOf, standingLine } from "./workbench-page.js";

/** Larger than any form: a study is at most 2 MB, and letters outside ASCII take three times their room. */
export const largeForm = express.urlencoded({ extended: false, limit: "8mb", parameterLimit: 20_000 });

/** The pages of forms, one for each part and for each structure and option. */
export function addEditing(
  app: Express,
  shelf: StudyShelf,
  find: (id: string | undefined) => ShelfEntry,
): void {
  const show = (request: Request, response: Response) => {
    const entry = find(String(request.params.id));
    const place = placeIn(entry, request);
    const author = authorOf(request);
    const isList = place.part.keys.length === 0 && place.at.length === 1;
    const balance = shelf.balance(entry);
    response.set("Cache-Control", "no-store");
    response.send(
      isList
        ? renderPage("items", itemsPage(entry, balance, place, author))
        : renderPage("edit", editPage(entry, balance, place, { author })),
    );
  };
  const save = (request: Request, response: Response) => {
    const entry = find(String(request.params.id));
    if (entry.isExample) throw new NotFoundError();
    const form = readForm(request.body);
    const place = placeIn(shelf.revision(entry.id, form.base) ?? entry, request);
    const result = saveForm(shelf, entry.id, place, form);
    rememberAuthor(response, form.author);
    answer({ shelf, request, response, place, form, result });
  };
  for (const path of ["/studies/:id/edit/:part", "/studies/:id/edit/:part/:index"]) {
    app.get(path, show);
    app.post(path, largeForm, save);
  }
}

function placeIn(entry: ShelfEntry, { params }: Request): EditPlace {
  const { document } = draftOf(entry.text, entry.fileName);
  const index = params.index === undefined ? undefined : String(params.index);
  const place = editPlace(entry.id, String(params.part), index, document);
  if (!place) throw new NotFoundError();
  return place;
}

interface Answering {
  readonly shelf: StudyShelf;
  readonly request: Request;
  readonly response: Response;
  readonly place: EditPlace;
  readonly form: SentForm;
  readonly result: SaveResult;
}

function answer({ shelf, request, response, place, form, result }: Answering): void {
  const wantsJson = request.accepts(["html", "json"]) === "json";
  if (!result.saved) {
    const conflict = conflictView(result, place, form);
    response.status(409);
    if (wantsJson) response.json({ conflict: renderPage("partials/conflict", conflict) });
    else {
      const { latest } = result;
      response.send(
        renderPage("edit", editPage(latest, shelf.balance(latest), place, { author: form.author, conflict })),
      );
    }
  } else if (wantsJson) response.json(savedAnswer(shelf, place, result.saved));
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
function savedAnswer(shelf: StudyShelf, place: EditPlace, saved: ShelfEntry): object {
  const draft = draftOf(saved.text, saved.fileName);
  const balance = shelf.balance(saved);
  const view = editView(place, draft, problemsOf(draft, balance));
  return {
    revision: saved.revision,
    standing: standingLine(saved),
    balance: renderPage("partials/balance-line", balanceView(balance)),
    summary: renderPage("partials/error-summary", view),
    levels: place.part.id === "levels" ? renderPage("partials/levels-picture", view) : undefined,
    marks: marksOf(balance),
    fields: allNodes(view.nodes).map(({ id, errors, needed }) => ({ id, error: errors.join(" "), needed })),
  };
}
