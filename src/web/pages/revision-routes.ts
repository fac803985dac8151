import type { Express } from "express";
import { textOf } from "../../app/answers/questions.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { DeletedStudyError } from "../../store/errors.js";
import { NotFoundError } from "../explain.js";
import { renderPage } from "../render.js";
import { type AskLatest, sendReport, sendResults } from "./awaited-pages.js";
import { numberIn } from "./keeping-routes.js";
import { revisionsPage } from "./revisions-page.js";
import type { StudyPages } from "./study-pages.js";
import { askWithOdds } from "./with-odds.js";

/** The revisions of a study, and what came out of each. */
export function addRevisions(
  app: Express,
  parts: Pick<StudyPages, "studies" | "answers" | "find" | "knownOdds" | "drawn">,
): void {
  const { studies, answers, find } = parts;
  const revisionOf = (id: string, revision: string): StudyEntry => {
    const card = studies.card(id);
    if (card?.state === "deleted") throw new DeletedStudyError(card);
    const entry = studies.revision(id, numberIn(revision));
    if (!entry) throw new NotFoundError();
    return entry;
  };
  app.get("/studies/:id/revisions", async (request, response) => {
    const entry = find(request.params.id);
    const balance = await answers.ask("balance", textOf(entry));
    response.send(renderPage("revisions", revisionsPage(entry, balance, studies)));
  });
  app.get("/studies/:id/revisions/:revision", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    const report = `${addressOf(entry)}/report`;
    return sendResults({ ...unchanging(entry), response, answers }, report);
  });
  app.get("/studies/:id/revisions/:revision/report", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    const howOf = (each: StudyEntry) => ({ links: {}, odds: parts.knownOdds(each), part: "all" }) as const;
    const ask: AskLatest<"report"> = (latest, signal) => askWithOdds(parts, "report", latest, signal);
    return sendReport({ ...unchanging(entry), response, answers }, howOf, ask);
  });
}

const addressOf = ({ id, revision }: StudyEntry) => `/studies/${id}/revisions/${revision}`;

const unchanging = (entry: StudyEntry) => ({ study: addressOf(entry), find: () => entry });
