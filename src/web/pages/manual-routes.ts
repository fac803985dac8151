import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Express } from "express";
import MarkdownIt from "markdown-it";
import { viewsFolder } from "../../report/document/assets.js";
import { linkedAssets } from "../../report/document/render-page.js";
import { renderPage } from "../render.js";

/** Pages for whoever runs the server or writes a study as a file; each is a Markdown file of the views. */
export const manualPages = [
  { page: "service", title: "Keeping the server running" },
  { page: "access", title: "Letting others in, and issuing reports" },
  { page: "study-format", title: "The study as a file, and the command line" },
] as const;

const markdown = new MarkdownIt("commonmark", { html: false });

const bodyOf = (page: string): string =>
  markdown.render(readFileSync(join(viewsFolder, "help", `${page}.md`), "utf8"));

export function addManual(app: Express): void {
  for (const { page, title } of manualPages) {
    app.get(`/help/${page}`, (_request, response) => {
      response.send(renderPage("manual", { title, body: bodyOf(page), assets: linkedAssets }));
    });
  }
}
