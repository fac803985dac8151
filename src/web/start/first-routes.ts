import type { Express } from "express";
import { textOf } from "../../app/answers/questions.js";
import type { AskedRuns } from "../../app/runs.js";
import type { Odds } from "../../study/odds/odds.js";
import { runQuestion } from "../pages/odds-routes.js";
import type { StudyPages } from "../pages/study-pages.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { renderPage } from "../render.js";
import { firstView } from "./first-view.js";

/** How much of a study's answer rests on typical values, and which to replace first. */
export function addFirstEstimate(
  app: Express,
  { runs, studies, answers, find }: StudyPages & { readonly runs: AskedRuns<Odds> },
): void {
  app.get("/studies/:id/first", async (request, response) => {
    const entry = find(request.params.id);
    const question = runQuestion(entry, studies);
    const state = runs.ask(question);
    const odds = state.state === "done" ? state.result : undefined;
    const { document } = question.study;
    const first = firstView({ entry, document, odds }, studies.assumptions.entries);
    const balance = await answers.ask("balance", textOf(entry));
    response.status(odds || !first ? 200 : 202).set("Cache-Control", "no-store");
    const frame = { entry, balance, part: "first", title: "Replace these first" };
    response.send(renderPage("first", workbenchPage(frame, { first })));
  });
}
