import type { Express } from "express";
import { textOf } from "../../app/answers/questions.js";
import type { ShelfEntry } from "../../app/study-entry.js";
import { DeletedStudyError } from "../../store/errors.js";
import { NotFoundError } from "../explain.js";
import { renderPage } from "../render.js";
import { numberIn } from "./keeping-routes.js";
import { revisionsPage } from "./revisions-page.js";
import { type StudyPages, sendReport, sendResults } from "./study-pages.js";

/** The revisions of a study, and what came out of each. */
export function addRevisions(
  app: Express,
  { shelf, answers, find }: Pick<StudyPages, "shelf" | "answers" | "find">,
): void {
  const revisionOf = (id: string, revision: string): ShelfEntry => {
    const card = shelf.card(id);
    if (card?.state === "deleted") throw new DeletedStudyError(card);
    const entry = shelf.revision(id, numberIn(revision));
    if (!entry) throw new NotFoundError();
    return entry;
  };
  app.get("/studies/:id/revisions", async (request, response) => {
    const entry = find(request.params.id);
    const balance = await answers.ask("balance", textOf(entry));
    response.send(renderPage("revisions", revisionsPage(entry, balance, shelf)));
  });
  app.get("/studies/:id/revisions/:revision", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    const report = `${addressOf(entry)}/report`;
    return sendResults({ ...unchanging(entry), response, answers }, report);
  });
  app.get("/studies/:id/revisions/:revision/report", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    const how = { links: {}, odds: undefined, part: "all" } as const;
    return sendReport({ ...unchanging(entry), response, answers }, () => how);
  });
}

const addressOf = ({ id, revision }: ShelfEntry) => `/studies/${id}/revisions/${revision}`;

const unchanging = (entry: ShelfEntry) => ({ study: addressOf(entry), find: () => entry });
