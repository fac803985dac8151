import type { Express } from "express";
import { type BalanceState, textOf } from "../../app/answers/questions.js";
import type { AskedRunState, AskedRuns, RunQuestion } from "../../app/runs.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { counted } from "../../counted.js";
import { earlyTable, oddsTables } from "../../report/odds/odds-tables.js";
import { oddsPictures } from "../../report/pictures/odds-pictures.js";
import { tornadoRows } from "../../report/pictures/tornado-rows.js";
import { formatter } from "../../report/words/format.js";
import type { StudyDocument } from "../../study/format/schema.js";
import { oddsSettings } from "../../study/format/uncertainty-schema.js";
import type { EarlyFigures } from "../../study/odds/early-figures.js";
import type { Odds } from "../../study/odds/odds.js";
import { renderPage } from "../render.js";
import { askAgainSeconds } from "./awaited-pages.js";
import type { StudyPages } from "./study-pages.js";
import { workbenchPage } from "./workbench-page.js";

/** How sure a study is: drawn beside the server while the reader's page asks how far it is. */
export function addOdds(
  app: Express,
  { runs, studies, answers, find }: StudyPages & { readonly runs: AskedRuns<Odds> },
): void {
  const questionOf = (entry: StudyEntry) => runQuestion(entry, studies);
  app.get("/studies/:id/odds", async (request, response) => {
    const entry = find(request.params.id);
    const question = questionOf(entry);
    const state = runs.ask(question);
    const balance = await answers.ask("balance", textOf(entry));
    response.status(state.state === "done" ? 200 : 202).set("Cache-Control", "no-store");
    response.send(renderPage("odds", oddsPage(entry, question, state, balance)));
  });
  app.get("/studies/:id/odds.json", (request, response) => {
    const state = runs.ask(questionOf(find(request.params.id)));
    response.set("Cache-Control", "no-store");
    if (state.state === "done") response.json(state.result);
    else response.status(202).set("Retry-After", String(askAgainSeconds)).json(state);
  });
  app.post("/studies/:id/odds/cancel", (request, response) => {
    const entry = find(request.params.id);
    runs.cancel(questionOf(entry));
    response.redirect(303, `/studies/${entry.id}`);
  });
}

const earlyNote =
  "Preliminary: other inputs may still come first. Net benefit with one input at a time at its low end (light) and its high end (dark), all else at central values.";

function earlyPage({ matters, ...figures }: EarlyFigures, document: StudyDocument) {
  const { money, study } = document;
  const tornado = matters && tornadoRows({ matters }, formatter(money.currency, study.units));
  return { figures: earlyTable(figures, document), tornado: tornado && { ...tornado, note: earlyNote } };
}

export function runQuestion(entry: StudyEntry, studies: Studies): RunQuestion {
  const document = studies.document(entry);
  return { text: entry.text, study: { document, settings: oddsSettings(document.study.uncertainty) } };
}

function oddsPage(
  entry: StudyEntry,
  { study }: RunQuestion,
  state: AskedRunState<Odds>,
  balance: BalanceState,
): object {
  const done =
    state.state === "done"
      ? {
          ...oddsTables(state.result, study.document),
          pictures: oddsPictures(state.result, study.document),
        }
      : undefined;
  return workbenchPage(
    { entry, balance, part: "odds", title: "How sure is it?" },
    {
      links: {
        here: `/studies/${entry.id}/odds`,
        json: `/studies/${entry.id}/odds.json`,
        cancel: `/studies/${entry.id}/odds/cancel`,
      },
      askAgain: done ? undefined : askAgainSeconds,
      progress: state.state === "drawing" ? state.progress : undefined,
      early: state.state === "drawing" && state.early ? earlyPage(state.early, study.document) : undefined,
      before: state.state === "waiting" ? counted(state.before, "other study", "other studies") : undefined,
      done,
    },
  );
}
