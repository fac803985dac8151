import type { Express, Request, Response } from "express";
import { editionText } from "../report/paper.js";
import type { Printer } from "../report/printer.js";
import type { ReportPart } from "../report/sections.js";
import type { Odds } from "../study/odds.js";
import { withFilePolicy } from "./access/security-headers.js";
import { type Answering, textOf } from "./answers/questions.js";
import { shortPatience, soon } from "./answers/soon.js";
import { listStandings } from "./list-standing.js";
import { askAgainSeconds } from "./odds-routes.js";
import { listPage } from "./pages.js";
import { readerSignal } from "./reader-gone.js";
import { renderPage } from "./render.js";
import type { ShelfEntry } from "./shelf-reading.js";
import type { StudyShelf } from "./study-shelf.js";
import { unfinishedPage } from "./unfinished-page.js";
import { workbenchPage } from "./workbench-page.js";

export interface StudyPages {
  readonly shelf: StudyShelf;
  readonly answers: Answering;
  readonly printer: Printer;
  readonly find: (id: string | undefined) => ShelfEntry;
  /** The odds that a reader had drawn before, for the report. */
  readonly knownOdds: (entry: ShelfEntry) => Odds | undefined;
}

/** The list, and of each study the results, the report and its files. */
export function addStudyPages(app: Express, parts: StudyPages): void {
  addUnfinished(app, parts);
  addPages(app, parts);
  addFiles(app, parts);
}

/** What needs a complete study says what is missing instead. */
function addUnfinished(app: Express, { shelf, answers }: StudyPages): void {
  const pages = [
    { path: "/studies/:id", part: "results" },
    { path: "/studies/:id/report", part: "report" },
    { path: "/studies/:id/report.pdf", part: "pdf" },
    { path: "/studies/:id/odds", part: "odds" },
    { path: "/studies/:id/forms", part: "forms" },
  ];
  for (const { path, part } of pages) {
    app.get(path, async (request, response, next) => {
      const entry = shelf.find(String(request.params.id));
      const balance =
        entry && entry.state !== "deleted" ? await answers.ask("balance", textOf(entry)) : undefined;
      if (!entry || !balance || balance.line) {
        next();
        return;
      }
      response.status(part === "results" ? 200 : 409);
      response.send(renderPage("unfinished", unfinishedPage(entry, balance, part)));
    });
  }
}

const linksOf = ({ id }: Pick<ShelfEntry, "id">) => ({
  back: "/",
  pdf: `/studies/${id}/report.pdf`,
  boardPdf: `/studies/${id}/report.pdf?part=board`,
  json: `/studies/${id}/results.json`,
});

function addPages(app: Express, { shelf, answers, find, knownOdds }: StudyPages): void {
  const missingIn = listStandings(shelf);
  app.get("/", (_request, response) => {
    response.send(renderPage("studies", listPage(shelf, missingIn)));
  });
  app.get("/studies/:id", (request, response) =>
    sendResults(
      { entry: find(request.params.id), response, answers },
      `/studies/${request.params.id}/report`,
    ),
  );
  app.get("/studies/:id/report", (request, response) => {
    const entry = find(request.params.id);
    const asked = { links: linksOf(entry), odds: knownOdds(entry), part: partAsked(request) };
    return sendReport({ entry, response, answers }, asked);
  });
}

interface Sending {
  readonly entry: ShelfEntry;
  readonly response: Response;
  readonly answers: Answering;
}

/** @param report its address */
export async function sendResults(sending: Sending, report: string): Promise<void> {
  const { entry, response, answers } = sending;
  const asked = ["results", { ...textOf(entry), report }] as const;
  const found = await soon(answers, asked, shortPatience, readerSignal(response));
  if (found === "under way") return sendWaiting(sending, "results");
  const balance = await answers.ask("balance", textOf(entry));
  const frame = { entry, balance, part: "results", title: "Results" };
  const content = { body: found.answer, drawsCharts: true };
  response.send(renderPage("comparison", workbenchPage(frame, content)));
}

/** The report on a screen. */
export async function sendReport(
  sending: Sending,
  how: { readonly links: object; readonly odds: Odds | undefined; readonly part: ReportPart },
): Promise<void> {
  const { entry, response, answers } = sending;
  const asked = ["report", { ...textOf(entry), ...how }] as const;
  const found = await soon(answers, asked, shortPatience, readerSignal(response));
  if (found === "under way") return sendWaiting(sending, "report");
  response.type("html").send(Buffer.from(found.answer));
}

/** Says that a page is being worked out, and shows it once it is: by a script, or by asking again every two seconds. */
async function sendWaiting({ entry, response, answers }: Sending, part: string): Promise<void> {
  const balance = await answers.ask("balance", textOf(entry));
  const content = { askAgain: askAgainSeconds, here: response.req.originalUrl, ready: figuresAddress(entry) };
  response.status(202).set({ "Cache-Control": "no-store", "Retry-After": String(askAgainSeconds) });
  response.send(
    renderPage("waiting", workbenchPage({ entry, balance, part, title: "Being worked out" }, content)),
  );
}

/** Where the figures of just this revision are once they are worked out. */
const figuresAddress = ({ id, isExample, revision }: ShelfEntry) =>
  isExample ? `/studies/${id}/results.json` : `/studies/${id}/revisions/${revision}/results.json`;

/** "?part=board" asks for the report without appendices. */
const partAsked = ({ query }: Request): ReportPart => (query.part === "board" ? "board" : "all");

function addFiles(app: Express, { answers, printer, find, knownOdds }: StudyPages): void {
  app.get("/studies/:id/report.pdf", async (request, response) => {
    const entry = find(request.params.id);
    const signal = readerSignal(response);
    const asked = { odds: knownOdds(entry), part: partAsked(request), edition: editionText(entry) };
    const { body, settings } = await answers.ask("printable", { ...textOf(entry), ...asked }, signal);
    const pdf = await printer.print(body, settings, signal);
    withFilePolicy(response, "pdf")
      .type("pdf")
      .set("Content-Disposition", `inline; filename="${entry.id}.pdf"`)
      .send(Buffer.from(pdf));
  });
  app.get("/studies/:id/results.json", (request, response) =>
    sendFigures({ entry: find(request.params.id), response, answers }),
  );
  app.get("/studies/:id/study", (request, response) => {
    const entry = find(request.params.id);
    response
      .type("text")
      .set("Content-Disposition", `attachment; filename="${entry.id}.yaml"`)
      .send(entry.text);
  });
}

export async function sendFigures({ entry, response, answers }: Sending): Promise<void> {
  const figures = await answers.ask("figures", textOf(entry), readerSignal(response));
  response.type("json").send(Buffer.from(figures));
}
