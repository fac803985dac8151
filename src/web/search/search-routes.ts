import type { Express } from "express";
import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import { type AskedRunState, askedRuns, usualRuns } from "../../app/runs.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { counted } from "../../counted.js";
import type { DrawControl } from "../../odds/ask-each.js";
import type { StudyToDraw } from "../../odds/messages.js";
import { InputError } from "../../study/reading/problems.js";
import type { SearchResult } from "../../study/search/result.js";
import { authorOf } from "../author.js";
import { largeForm } from "../editing/edit-routes.js";
import { NotFoundError } from "../explain.js";
import { askAgainSeconds } from "../pages/awaited-pages.js";
import { runQuestion } from "../pages/odds-routes.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { formIn } from "../sent-form.js";
import { addedOption } from "./added-option.js";
import { foundOf } from "./found.js";

/** Searches for the program that fits, in worker threads; takes seconds. */
export type Searcher = (study: StudyToDraw, control: DrawControl) => Promise<SearchResult>;

/** The page of the search; a program of it becomes an option of the study. */
export function addSearch(app: Express, parts: StudyPages & { readonly search: Searcher }): void {
  const { studies, answers, find, search } = parts;
  const runs = askedRuns({ ...usualRuns, draw: search });
  app.get("/studies/:id/search", async (request, response) => {
    const entry = find(request.params.id);
    const balance = await answers.ask("balance", textOf(entry));
    if (!balance.line) throw new InputError(balance.subject, balance.problems);
    const state = runs.ask(runQuestion(entry, studies));
    response.status(state.state === "done" ? 200 : 202).set("Cache-Control", "no-store");
    const frame = { entry, balance, part: "search", title: "The program that fits" };
    const page = pageOf(entry, state, parts, chosenIn(request.query));
    response.send(renderPage("search", workbenchPage(frame, page)));
  });
  app.get("/studies/:id/search.json", (request, response) => {
    const state = runs.ask(runQuestion(find(request.params.id), studies));
    response.set("Cache-Control", "no-store");
    if (state.state === "done") response.json(state.result);
    else response.status(202).set("Retry-After", String(askAgainSeconds)).json(state);
  });
  app.post("/studies/:id/search/cancel", (request, response) => {
    const entry = find(request.params.id);
    runs.cancel(runQuestion(entry, studies));
    response.redirect(303, `/studies/${entry.id}`);
  });
  app.post("/studies/:id/search/option", largeForm, (request, response) => {
    const entry = find(String(request.params.id));
    const result = runs.known(entry.text);
    const { point: id } = formIn(form, request.body);
    const added = result && !entry.isExample && addedOption(entry, result, id);
    if (!added) throw new NotFoundError();
    const { text, place, name } = added;
    const writer = { author: authorOf(request), note: `Added ${name}`, origin: "form" } as const;
    studies.save(entry.id, entry.revision, text, writer);
    response.redirect(303, `/studies/${entry.id}/edit/options/${place}`);
  });
}

const chosenIn = ({ point }: Readonly<Record<string, unknown>>): string =>
  typeof point === "string" ? point : "";

const form = z.object({ point: z.string().max(1000, "at most 1,000 characters") });

function pageOf(
  entry: StudyEntry,
  state: AskedRunState<SearchResult>,
  { studies }: StudyPages,
  chosen: string,
): object {
  const here = `/studies/${entry.id}/search`;
  const links = { here, json: `${here}.json`, cancel: `${here}/cancel`, option: `${here}/option` };
  if (state.state !== "done") {
    return {
      links,
      askAgain: askAgainSeconds,
      progress: state.state === "drawing" ? state.progress : undefined,
      before: state.state === "waiting" ? counted(state.before, "other study", "other studies") : undefined,
    };
  }
  const document = studies.document(entry);
  return {
    links,
    drawsCharts: true,
    tableHere: true,
    done: foundOf(state.result, document, { here, isExample: entry.isExample, chosen }),
  };
}
