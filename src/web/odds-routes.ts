import type { Express } from "express";
import { oddsTables } from "../report/odds-tables.js";
import { oddsSettings } from "../study/uncertainty-schema.js";
import type { OddsDesk, OddsQuestion, OddsState } from "./odds-desk.js";
import { renderPage } from "./render.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";
import { workbenchPage } from "./workbench-page.js";

/** Seconds after which a page or a program asks again. */
export const askAgainSeconds = 2;

/** How sure a study is: drawn beside the server while the reader's page asks how far it is. */
export function addOdds(
  app: Express,
  parts: { readonly desk: OddsDesk; readonly shelf: StudyShelf },
  find: (id: string | undefined) => ShelfEntry,
): void {
  const questionOf = (entry: ShelfEntry) => oddsQuestion(entry, parts.shelf);
  app.get("/studies/:id/odds", (request, response) => {
    const entry = find(request.params.id);
    const question = questionOf(entry);
    const state = parts.desk.ask(question);
    response.status(state.state === "done" ? 200 : 202).set("Cache-Control", "no-store");
    response.send(renderPage("odds", oddsPage(entry, question, state, parts.shelf)));
  });
  app.get("/studies/:id/odds.json", (request, response) => {
    const state = parts.desk.ask(questionOf(find(request.params.id)));
    response.set("Cache-Control", "no-store");
    if (state.state === "done") response.json(state.odds);
    else response.status(202).set("Retry-After", String(askAgainSeconds)).json(state);
  });
  app.post("/studies/:id/odds/cancel", (request, response) => {
    const entry = find(request.params.id);
    parts.desk.cancel(questionOf(entry));
    response.redirect(303, `/studies/${entry.id}`);
  });
}

export function oddsQuestion(entry: ShelfEntry, shelf: StudyShelf): OddsQuestion {
  const { document } = shelf.run(entry);
  return { text: entry.text, study: { document, settings: oddsSettings(document.study.uncertainty) } };
}

function oddsPage(entry: ShelfEntry, { study }: OddsQuestion, state: OddsState, shelf: StudyShelf): object {
  const done = state.state === "done" ? oddsTables(state.odds, study.document) : undefined;
  return workbenchPage(
    { entry, balance: shelf.balance(entry), part: "odds", title: "How sure is it?" },
    {
      links: {
        here: `/studies/${entry.id}/odds`,
        json: `/studies/${entry.id}/odds.json`,
        cancel: `/studies/${entry.id}/odds/cancel`,
      },
      askAgain: done ? undefined : askAgainSeconds,
      progress: state.state === "drawing" ? state.progress : undefined,
      before: state.state === "waiting" ? state.before : undefined,
      done,
    },
  );
}
