import type { Express } from "express";
import { checklists } from "../../editor/help/checklist.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { glossary } from "../../report/words/glossary.js";
import { NotFoundError } from "../explain.js";
import { renderPage } from "../render.js";
import { manualPages } from "./manual-routes.js";

const words = [...glossary].sort((one, other) => one.term.localeCompare(other.term, "en"));

/** The words of reports and pages, and what to ask of whom, on sheets to be printed and sent. */
export function addHelp(app: Express): void {
  app.get("/help", (_request, response) => {
    const view = {
      title: "Words, and where the figures come from",
      words,
      lists: checklists(),
      manual: manualPages,
    };
    response.send(renderPage("help", { ...view, assets: linkedAssets }));
  });
  app.get("/help/checklist/:id", ({ params }, response) => {
    const list = checklists().find(({ id }) => id === params.id);
    if (!list) throw new NotFoundError();
    response.send(renderPage("checklist", { ...list, assets: linkedAssets }));
  });
}
