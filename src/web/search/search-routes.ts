import type { Express } from "express";
import { z } from "zod";
import { textOf } from "../../app/answers/questions.js";
import { type AskedRunState, askedRuns, usualRuns } from "../../app/runs.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { freeId } from "../../editor/actions.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { edited } from "../../editor/study-text.js";
import type { DrawControl } from "../../odds/draw.js";
import type { StudyToDraw } from "../../odds/messages.js";
import { frontierChart } from "../../report/search/frontier-chart.js";
import { searchTables } from "../../report/search/search-tables.js";
import { lettersOf, programWords } from "../../report/search/search-words.js";
import { InputError, problemsOf } from "../../study/reading/problems.js";
import type { SearchPoint, SearchResult } from "../../study/search/result.js";
import { writtenOption } from "../../study/search/written.js";
import { authorOf } from "../author.js";
import { largeForm } from "../editing/edit-routes.js";
import { NotFoundError } from "../explain.js";
import { runQuestion } from "../pages/odds-routes.js";
import { askAgainSeconds, type StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";

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
    response.send(renderPage("search", workbenchPage(frame, pageOf(entry, state, parts))));
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
    const { point: id } = pointForm(request.body);
    const point = result && allPoints(result).find((each) => each.id === id);
    if (!result || !point || entry.isExample) throw new NotFoundError();
    const { text, place, name } = withOption(entry, result, point);
    const writer = { author: authorOf(request), note: `Added ${name}`, origin: "form" } as const;
    studies.save(entry.id, entry.revision, text, writer);
    response.redirect(303, `/studies/${entry.id}/edit/options/${place}`);
  });
}

const form = z.object({ point: z.string().max(1000, "at most 1,000 characters") });

function pointForm(body: unknown): z.output<typeof form> {
  const parsed = form.safeParse(body ?? {});
  if (parsed.success) return parsed.data;
  throw new InputError("The form", problemsOf(parsed.error.issues, body));
}

const allPoints = ({ frontier, answers }: SearchResult): SearchPoint[] => [
  ...frontier,
  ...answers.flatMap(({ point }) => (point ? [point] : [])),
];

/** The study's text with a program of the search as its last option. */
function withOption(entry: StudyEntry, result: SearchResult, point: SearchPoint) {
  const options = itemsOf(childOf(draftOf(entry.text, entry.fileName).document, "options"));
  const base = options.find((each) => childOf(each, "id") === result.baseId);
  if (typeof base !== "object" || base === null) throw new NotFoundError();
  const letter = lettersOf(result).get(point.id);
  const name = letter ? `Program ${letter} of the search` : "Program of the search";
  const id = freeId("searched", options);
  const value = writtenOption({ ...base }, point, { id, name, lumpShare: result.lumpShare });
  return {
    name,
    place: options.length,
    text: edited(entry.text, [{ at: ["options", options.length], value }]),
  };
}

function pageOf(entry: StudyEntry, state: AskedRunState<SearchResult>, { studies }: StudyPages): object {
  const here = `/studies/${entry.id}/search`;
  const links = { here, json: `${here}.json`, cancel: `${here}/cancel`, option: `${here}/option` };
  if (state.state !== "done") {
    return {
      links,
      askAgain: askAgainSeconds,
      progress: state.state === "drawing" ? state.progress : undefined,
      before: state.state === "waiting" ? state.before : undefined,
    };
  }
  const { result } = state;
  const document = studies.document(entry);
  const letters = lettersOf(result);
  return {
    links,
    drawsCharts: true,
    tableHere: true,
    done: {
      ...searchTables(result, document),
      chart: { ...frontierChart(result, document), tableHere: true },
      points: entry.isExample
        ? []
        : result.frontier.map((point) => ({
            id: point.id,
            text: `${letters.get(point.id) ?? ""}: ${programWords(point)}`,
          })),
      base: result.baseName,
    },
  };
}
