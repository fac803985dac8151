import express, { type Express } from "express";
import type { Assumption } from "../assumptions/entry.js";
import { withoutOverride } from "../editor/override-edits.js";
import { withOwnValue } from "../editor/own-value.js";
import type { Swing } from "../study/judged-swings.js";
import type { StudyDocument } from "../study/schema.js";
import { answerDesk, patienceMilliseconds } from "./answer-desk.js";
import { type AssumptionPage, assumptionPage } from "./assumption-page.js";
import { assumptionsPage, type JudgedState, knownSwings, readSearch } from "./assumptions-page.js";
import { authorOf, rememberAuthor } from "./author.js";
import { NotFoundError } from "./explain.js";
import type { OddsDesk } from "./odds-desk.js";
import { type OwnValueForm, readOwnValueForm, saveOwnValue, triedText } from "./own-value-form.js";
import { renderPage } from "./render.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";

/** Works out how far each judged value moves a study's answer; takes seconds. */
export type Judge = (document: StudyDocument) => Promise<Swing[]>;

/** Assumptions of a study: the table of all, and for each its own page, where a value may be tried and kept. */
export function addAssumptions(
  app: Express,
  { shelf, desk, judge }: { readonly shelf: StudyShelf; readonly desk: OddsDesk; readonly judge: Judge },
  find: (id: string | undefined) => ShelfEntry,
): void {
  const swings = answerDesk(
    ({ text }: ShelfEntry) => [text],
    (entry) => judge(shelf.compared(entry).document),
  );
  const judged = async (entry: ShelfEntry): Promise<JudgedState> => {
    if (!shelf.balance(entry).line) return "unfinished";
    const known = knownSwings(entry, shelf, desk);
    if (known) return { swings: known };
    const found = await swings.within(patienceMilliseconds, entry);
    return found === "under way" ? found : { swings: found.answer };
  };
  app.get("/studies/:id/assumptions", async (request, response) => {
    const entry = find(request.params.id);
    const view = assumptionsPage(entry, shelf, await judged(entry), {
      ...readSearch(request.query),
      author: authorOf(request),
    });
    response.set("Cache-Control", "no-store").send(renderPage("assumptions", view));
  });
  app.get("/studies/:id/assumptions/judged.json", async (request, response) => {
    response.json({ swings: await swings.answer(find(request.params.id)) });
  });
  const parts = { shelf, find };
  addTrying(app, parts);
  addKeepingOwn(app, parts);
}

interface Parts {
  readonly shelf: StudyShelf;
  readonly find: (id: string | undefined) => ShelfEntry;
}

const path = "/studies/:id/assumptions/:assumption";

const rendered = (view: AssumptionPage) => renderPage("assumption", assumptionPage(view));

function entryOf(id: string, { assumptions }: StudyShelf): Assumption {
  const entry = assumptions.entries.get(id);
  if (!entry) throw new NotFoundError();
  return entry;
}

/** Nothing is saved: a tried value stands in the address. */
function addTrying(app: Express, { shelf, find }: Parts): void {
  app.get(path, ({ params, query, headers }, response) => {
    const study = find(params.id);
    const entry = entryOf(params.assumption, shelf);
    const typed =
      query.value === undefined
        ? undefined
        : readOwnValueForm({ ...query, base: query.base ?? study.revision });
    response.set("Cache-Control", "no-store");
    const author = typed?.author || authorOf({ headers });
    response.send(rendered({ shelf, study, entry, typed, isTrial: true, author }));
  });
}

const largestForm = "20kb";

function addKeepingOwn(app: Express, { shelf, find }: Parts): void {
  const form = express.urlencoded({ extended: false, limit: largestForm });
  const own = (id: string) => {
    const study = find(id);
    if (study.isExample) throw new NotFoundError();
    return study;
  };
  app.post(path, form, ({ params, body }, response) => {
    const study = own(params.id);
    const entry = entryOf(params.assumption, shelf);
    const typed = readOwnValueForm(body);
    const { author } = typed;
    rememberAuthor(response, author);
    if (triedText(study, entry, typed, shelf.assumptions).wrong) {
      response.status(400).send(rendered({ shelf, study, entry, typed, author }));
      return;
    }
    const result = saveOwnValue(shelf, study, entry.id, typed, keeping(entry, typed));
    if (result.saved) response.redirect(303, `/studies/${study.id}/assumptions/${entry.id}`);
    else {
      const { latest, theirs } = result;
      response.status(409);
      response.send(rendered({ shelf, study: latest, entry, typed, author, conflict: { theirs } }));
    }
  });
  app.post(`${path}/reset`, form, ({ params, body }, response) => {
    const study = own(params.id);
    const id = params.assumption;
    const { author, base } = readOwnValueForm(body);
    rememberAuthor(response, author);
    const result = saveOwnValue(shelf, study, id, { author, base }, resetting(id, shelf));
    if (result.saved) response.redirect(303, `/studies/${study.id}/assumptions`);
    else {
      const { latest, theirs } = result;
      const entry = entryOf(id, shelf);
      response.status(409);
      response.send(
        rendered({ shelf, study: latest, entry, typed: undefined, author, conflict: { theirs } }),
      );
    }
  });
}

const resetting = (id: string, { assumptions }: StudyShelf) => ({
  note: `Assumptions: ${assumptions.entries.get(id)?.title ?? id} as usual`,
  apply: ({ text, fileName }: ShelfEntry) => withoutOverride(text, fileName, id),
});

const keeping = ({ id, title }: Assumption, typed: OwnValueForm) => ({
  note: `Assumptions: ${title ?? id} ${typed.value}`,
  apply: ({ text, fileName }: ShelfEntry) =>
    withOwnValue(text, fileName, id, { value: typed.value, reason: typed.reason }),
});
