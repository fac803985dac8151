import express, { type Express } from "express";
import { patienceMilliseconds } from "../../app/answers/answer-in-time.js";
import { type BalanceState, textOf } from "../../app/answers/questions.js";
import { askedRuns, resultWithin, usualRuns } from "../../app/runs.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import type { Assumption } from "../../assumptions/entry.js";
import { withoutOverride } from "../../editor/override-edits.js";
import { withOwnValue } from "../../editor/own-value.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { Swing } from "../../study/odds/assumption-swings.js";
import { authorOf, rememberAuthor } from "../author.js";
import { NotFoundError } from "../explain.js";
import { askAgainSeconds } from "../pages/awaited-pages.js";
import { runQuestion } from "../pages/odds-routes.js";
import type { StudyPages } from "../pages/study-pages.js";
import { renderPage } from "../render.js";
import { type AssumptionPage, assumptionPage } from "./assumption-page.js";
import { assumptionsPage, readSearch, type SwingState } from "./assumptions-page.js";
import { type OwnValueForm, readOwnValueForm, saveOwnValue, triedText } from "./own-value-form.js";

/** Works out how far each assumption moves a study's answer; takes seconds. */
export type Judge = (document: StudyDocument, signal: AbortSignal) => Promise<Swing[]>;

/** Assumptions of a study: the table of all, and for each its own page, where a value may be tried and kept. */
export function addAssumptions(app: Express, parts: StudyPages & { readonly judge: Judge }): void {
  const { studies, answers, find, judge } = parts;
  const swings = askedRuns({
    ...usualRuns,
    ...judging,
    draw: ({ document }, { signal }) => judge(document, signal),
  });
  const swingsIn = async (entry: StudyEntry, balance: BalanceState): Promise<SwingState> => {
    if (!balance.line) return "unfinished";
    const found = await resultWithin(patienceMilliseconds, swings, runQuestion(entry, studies));
    return found ? { swings: found } : "under way";
  };
  app.get("/studies/:id/assumptions", async (request, response) => {
    const entry = find(request.params.id);
    const balance = await answers.ask("balance", textOf(entry));
    const view = assumptionsPage({ entry, studies, balance }, await swingsIn(entry, balance), {
      ...readSearch(request.query),
      author: authorOf(request),
    });
    response.set("Cache-Control", "no-store").send(renderPage("assumptions", view));
  });
  app.get("/studies/:id/assumptions/swings.json", async (request, response) => {
    const found = await resultWithin(
      patienceMilliseconds,
      swings,
      runQuestion(find(request.params.id), studies),
    );
    if (found) response.json({ swings: found });
    else response.status(202).set("Retry-After", String(askAgainSeconds)).json({ state: "drawing" });
  });
  addTrying(app, parts);
  addKeepingOwn(app, parts);
}

/** Runs for which no page asks any more end soon: another revision is most often asked for instead. */
const judging = { patienceMilliseconds: 10_000, mostKept: 16 };

type Parts = Pick<StudyPages, "studies" | "answers" | "find">;

const path = "/studies/:id/assumptions/:assumption";

const rendered = async (view: AssumptionPage) => renderPage("assumption", await assumptionPage(view));

function entryOf(id: string, { assumptions }: Studies): Assumption {
  const entry = assumptions.entries.get(id);
  if (!entry) throw new NotFoundError();
  return entry;
}

/** Nothing is saved: a tried value stands in the address. */
function addTrying(app: Express, { studies, answers, find }: Parts): void {
  app.get(path, async ({ params, query, headers }, response) => {
    const study = find(params.id);
    const entry = entryOf(params.assumption, studies);
    const typed =
      query.value === undefined
        ? undefined
        : readOwnValueForm({ ...query, base: query.base ?? study.revision });
    response.set("Cache-Control", "no-store");
    const author = typed?.author || authorOf({ headers });
    response.send(await rendered({ studies, answers, study, entry, typed, isTrial: true, author }));
  });
}

const largestForm = "20kb";

function addKeepingOwn(app: Express, { studies, answers, find }: Parts): void {
  const form = express.urlencoded({ extended: false, limit: largestForm });
  const own = (id: string) => {
    const study = find(id);
    if (study.isExample) throw new NotFoundError();
    return study;
  };
  app.post(path, form, async ({ params, body }, response) => {
    const study = own(params.id);
    const entry = entryOf(params.assumption, studies);
    const typed = readOwnValueForm(body);
    const { author } = typed;
    rememberAuthor(response, author);
    if (triedText(study, entry, typed, studies.assumptions).wrong) {
      response.status(400).send(await rendered({ studies, answers, study, entry, typed, author }));
      return;
    }
    const result = saveOwnValue(studies, study, entry.id, typed, keeping(entry, typed));
    if (result.saved) response.redirect(303, `/studies/${study.id}/assumptions/${entry.id}`);
    else {
      const { latest, theirs } = result;
      response.status(409);
      response.send(
        await rendered({ studies, answers, study: latest, entry, typed, author, conflict: { theirs } }),
      );
    }
  });
  app.post(`${path}/reset`, form, async ({ params, body }, response) => {
    const study = own(params.id);
    const id = params.assumption;
    const { author, base } = readOwnValueForm(body);
    rememberAuthor(response, author);
    const result = saveOwnValue(studies, study, id, { author, base }, resetting(id, studies));
    if (result.saved) response.redirect(303, `/studies/${study.id}/assumptions`);
    else {
      const { latest, theirs } = result;
      const entry = entryOf(id, studies);
      response.status(409);
      response.send(
        await rendered({
          studies,
          answers,
          study: latest,
          entry,
          typed: undefined,
          author,
          conflict: { theirs },
        }),
      );
    }
  });
}

const resetting = (id: string, { assumptions }: Studies) => ({
  note: `Assumptions: ${assumptions.entries.get(id)?.title ?? id} as usual`,
  apply: ({ text, fileName }: StudyEntry) => withoutOverride(text, fileName, id),
});

const keeping = ({ id, title }: Assumption, typed: OwnValueForm) => ({
  note: `Assumptions: ${title} ${typed.value}`,
  apply: ({ text, fileName }: StudyEntry) =>
    withOwnValue(text, fileName, id, { value: typed.value, reason: typed.reason }),
});
