import type { Express } from "express";
import { linkedAssets, renderReport } from "../report/html.js";
import { NotFoundError } from "./explain.js";
import { numberIn } from "./keeping-routes.js";
import { comparisonPage } from "./pages.js";
import { renderPage } from "./render.js";
import { revisionsPage } from "./revisions-page.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";

/** The revisions of a study, and what came out of each. */
export function addRevisions(
  app: Express,
  shelf: StudyShelf,
  find: (id: string | undefined) => ShelfEntry,
): void {
  const revisionOf = (id: string, revision: string): ShelfEntry => {
    find(id);
    const entry = shelf.revision(id, numberIn(revision));
    if (!entry) throw new NotFoundError();
    return entry;
  };
  app.get("/studies/:id/revisions", (request, response) => {
    response.send(renderPage("revisions", revisionsPage(find(request.params.id), shelf)));
  });
  app.get("/studies/:id/revisions/:revision", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    const links = { report: `/studies/${entry.id}/revisions/${entry.revision}/report` };
    response.send(renderPage("comparison", comparisonPage(entry, shelf.run(entry), links)));
  });
  app.get("/studies/:id/revisions/:revision/report", (request, response) => {
    const entry = revisionOf(request.params.id, request.params.revision);
    response.send(renderReport(shelf.run(entry), linkedAssets));
  });
}
